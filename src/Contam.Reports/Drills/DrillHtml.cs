using System.Collections.Immutable;
using System.Globalization;
using Contam.Drills;
using Contam.Reports.Drawing;
using Contam.Reports.Markup;
using Contam.Reports.Text;

namespace Contam.Reports.Drills;

/// <summary>
/// An exercise as one HTML page that stands by itself: the picture of the circuits without the spread, the questions, the answers folded, and not printed while they are. With script on,
/// the spread can be played on the picture hop by hop.
/// </summary>
public static class DrillHtml
{
    private const string Sheet = """
        body{font:16px/1.5 system-ui,sans-serif;margin:1.5em auto;max-width:72em;padding:0 1em;color:#111;background:#fff;overflow-wrap:break-word}
        h1{font-size:1.4em;line-height:1.25}h2{font-size:1.15em;border-bottom:1px solid #999;margin-top:2em}h3{font-size:1em;margin:1.6em 0 .3em}
        .sheet{overflow:auto;border:1px solid #888;max-height:85vh}.sheet:focus-visible,summary:focus-visible,button:focus-visible{outline:3px solid #0b3fa8;outline-offset:2px}
        .given{color:#333;margin:.2em 0}.choices{list-style:none;padding:0;max-width:50em}.choices>li{display:flex;gap:.8em;padding:.4em .2em;border-top:1px solid #ddd}
        .choices>li>b{min-width:1em}.choices ol{margin:0;padding-left:1.6em}
        details{margin:.5em 0;border:1px solid #bbb;border-radius:4px;padding:.3em .8em}summary{cursor:pointer;font-weight:bold;padding:.3em 0}
        .play{display:flex;flex-wrap:wrap;gap:.5em;align-items:center;margin:.6em 0}.play[hidden]{display:none}.play output{flex:1 1 16em}
        button{font:inherit;padding:.35em .9em;border:1px solid #555;border-radius:4px;background:#f2f2f2;color:#111;cursor:pointer}button:disabled{color:#767676;border-color:#bbb;cursor:default}
        .quiet{color:#444;font-size:.9em}
        .sheet.whole svg{width:100%;height:auto}
        .cd-picture .cd-lit rect{fill:#e3ecff}.cd-picture .cd-lit.newest rect{fill:#9fbcf5}
        .paper{display:none}
        @media print{details li:last-child{break-before:avoid}.paper{display:block}.circuits,details:not([open]),.answers:not(:has(details[open])){display:none}body{margin:0;padding:0;max-width:none;font-size:11pt}li,h3,.choices{break-inside:avoid}h2,h3{break-after:avoid}}
        """;

    // Reads what is reached from the list of hops, so that the page holds it once.
    private const string Script = """
        (() => {
          const hops = [...document.querySelectorAll('[data-reached]')].map(hop => ({
            text: hop.textContent,
            parts: hop.dataset.reached.split(' '),
            ways: hop.dataset.ways.split(',').map(way => way.split(' '))
          }));
          const play = document.querySelector('.play');
          if (hops.length === 0) return;
          const picture = document.querySelector('.cd-picture');
          const boxes = [...picture.querySelectorAll('[data-part]')].map(box => ({ box, parts: box.dataset.part.split(' ') }));
          const lines = [...picture.querySelectorAll('[data-from]')].map(line => ({ line, from: line.dataset.from.split(' '), to: line.dataset.to.split(' ') }));
          const [back, next, all, whole] = play.querySelectorAll('button');
          const says = play.querySelector('output');
          const sheet = document.querySelector('.sheet');
          let at = 0;
          const bringIntoSight = box => {
            const here = box.getBoundingClientRect(), frame = sheet.getBoundingClientRect();
            if (here.left < frame.left || here.right > frame.right) sheet.scrollLeft += here.left - frame.left - frame.width / 3;
            if (here.top < frame.top || here.bottom > frame.bottom) sheet.scrollTop += here.top - frame.top - frame.height / 3;
          };
          const show = () => {
            const reached = new Set(hops.slice(0, at).flatMap(hop => hop.parts));
            const ways = hops.slice(0, at).flatMap(hop => hop.ways);
            const latest = new Set(at === 0 ? [] : hops[at - 1].parts);
            boxes.forEach(one => one.box.classList.toggle('newest', one.parts.some(part => latest.has(part))));
            boxes.forEach(one => one.box.classList.toggle('cd-lit', one.parts.some(part => reached.has(part))));
            lines.forEach(one => one.line.classList.toggle('cd-lit', ways.some(way => one.from.includes(way[0]) && one.to.includes(way[1]))));
            back.disabled = at === 0;
            next.disabled = all.disabled = at === hops.length;
            says.textContent = at === 0 ? '' : 'Hop ' + at + ' of ' + hops.length + ': ' + hops[at - 1].text;
            const newest = at === 0 ? picture.querySelector('.cd-failed') : boxes.find(one => one.parts.some(part => hops[at - 1].parts.includes(part))).box;
            if (newest) bringIntoSight(newest);
          };
          back.addEventListener('click', () => { at -= 1; show(); });
          next.addEventListener('click', () => { at += 1; show(); });
          all.addEventListener('click', () => { at = hops.length; show(); });
          whole.addEventListener('click', () => {
            whole.setAttribute('aria-pressed', sheet.classList.toggle('whole'));
            show();
          });
          play.hidden = false;
          show();
        })();
        """;

    /// <summary>Writes the page.</summary>
    /// <param name="drill">The exercise.</param>
    /// <param name="answersAreOpen">Whether the answers stand open, so that they are printed too.</param>
    /// <param name="page">Where it goes.</param>
    /// <param name="look">Units of sizes.</param>
    public static void Write(Drill drill, bool answersAreOpen, MarkupWriter page, TextLook look)
    {
        ArgumentNullException.ThrowIfNull(drill);
        ArgumentNullException.ThrowIfNull(page);
        var sheet = new DrillSheet(drill, look);
        HtmlPage.Begin(page, sheet.Title, PrintPieces.Style + Sheet, Script).Leaf("h1", sheet.Title).Line().Leaf("p", sheet.FamilyLine).Line().Leaf("p", sheet.Task).Line().Leaf("p", sheet.SeedLine, ("class", "quiet")).Line();
        (double width, double height) = Picture(page, drill);
        page.Leaf("h2", "Questions").Line();
        foreach (SheetQuestion question in sheet.Questions)
            Ask(page, question);
        if (!sheet.LeftOut.IsEmpty)
        {
            page.Leaf("h2", "Left out").Line().Open("ul").Line();
            foreach ((_, string text) in sheet.LeftOut)
                page.Leaf("li", text).Line();
            page.Close().Line();
        }

        // On paper the picture follows the questions, on sheets of its own that lie beside them.
        page.Open("section", ("class", "paper"), ("aria-hidden", "true")).Leaf("h2", "The circuits").Line();
        PrintPieces.Write(page, "circuits", width, height);
        page.Close().Line();
        page.Open("section", ("class", "answers")).Leaf("h2", "Answers").Line();
        string? open = answersAreOpen ? "open" : null;
        foreach (SheetQuestion question in sheet.Questions)
            Answer(page, question, open);
        Hops(page, sheet, open);
        page.Close().Line();
        page.Script(Script).Line();
        HtmlPage.End(page);
    }

    private static (double Width, double Height) Picture(MarkupWriter page, Drill drill)
    {
        page.Open("section", ("class", "circuits")).Leaf("h2", "The circuits").Line();
        page.Open("div", ("class", "sheet"), ("tabindex", "0"), ("role", "region"), ("aria-label", "picture of the circuits")).Line();
        (double Width, double Height) size = CircuitSvg.Write(drill.Request.Family, [], drill.Request.Failed, new PictureOptions { HidesBarriers = true, PageId = "circuits", LegendWidth = PrintPieces.Widest }, page);
        page.Close().Line();
        page.Open("div", ("class", "play"), ("hidden", "hidden"))
            .Leaf("button", "Back", ("type", "button")).Leaf("button", "Next hop", ("type", "button")).Leaf("button", "All of it", ("type", "button")).Leaf("button", "Whole picture", ("type", "button"), ("aria-pressed", "false"))
            .Leaf("output", "", ("aria-live", "polite")).Leaf("span", "Plays the spread on the picture, and so gives answers away.", ("class", "quiet")).Close().Close().Line();
        return size;
    }

    private static void Ask(MarkupWriter page, SheetQuestion question)
    {
        page.Leaf("h3", string.Create(CultureInfo.InvariantCulture, $"{question.Number}. {question.Asks}")).Line();
        foreach (string given in question.Given)
            page.Leaf("p", given, ("class", "given")).Line();
        page.Open("ul", ("class", "choices")).Line();
        foreach (SheetChoice choice in question.Choices)
        {
            page.Open("li").Leaf("b", choice.Letter);
            if (choice.Steps.IsEmpty)
                page.Leaf("span", choice.Text);
            else
                Steps(page, choice.Steps);
            page.Close().Line();
        }

        page.Close().Line();
    }

    private static void Steps(MarkupWriter page, ImmutableArray<string> steps)
    {
        page.Open("ol");
        foreach (string step in steps)
            page.Leaf("li", step);
        page.Close();
    }

    private static void Answer(MarkupWriter page, SheetQuestion question, string? open)
    {
        page.Open("details", ("open", open)).Leaf("summary", string.Create(CultureInfo.InvariantCulture, $"Answer {question.Number}")).Line();
        page.Open("ul", ("class", "choices")).Line();
        foreach (SheetChoice choice in question.Choices)
            page.Open("li").Leaf("b", choice.Letter).Leaf("span", choice.IsRight ? $"Right. {choice.Because}" : choice.Because).Close().Line();
        page.Close().Close().Line();
    }

    private static void Hops(MarkupWriter page, DrillSheet sheet, string? open)
    {
        page.Open("details", ("open", open)).Leaf("summary", "The spread, hop by hop").Line();
        if (sheet.Hops.IsEmpty)
            page.Leaf("p", "It goes no further.").Line();
        page.Open("ol").Line();
        foreach ((_, string text, ImmutableArray<DrillHop> parts) in sheet.Hops)
        {
            page.Leaf(
                "li",
                text,
                ("data-reached", string.Join(' ', parts.Select(hop => hop.Part.Value))),
                ("data-ways", string.Join(',', parts.Select(hop => $"{hop.Via.Value} {hop.Part.Value}")))).Line();
        }

        page.Close().Close().Line();
    }
}
