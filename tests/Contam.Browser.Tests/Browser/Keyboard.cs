namespace Contam.Browser.Tests.Browser;

/// <summary>Goes through a page with the Tab key alone, unfolding with Enter what is folded.</summary>
internal static class Keyboard
{
    // Notes what gets the focus and whether it then looks any different. What can be clicked without being a control of HTML shows by its cursor.
    private const string Watch = """
        (() => {
          const look = one => [one, ...one.querySelectorAll(':scope > rect')].map(part => {
            const style = getComputedStyle(part);
            return [style.outlineStyle === 'none' ? '' : style.outlineWidth + style.outlineColor, style.stroke, style.strokeWidth].join();
          }).join();
          const plain = new Map();
          const seen = window.seen = { reached: new Set(), unseen: [], last: null };
          window.controls = within => [...within.querySelectorAll('*')].filter(one => {
            if (one.disabled || !one.checkVisibility({ checkOpacity: true, checkVisibilityCSS: true })) return false;
            if (one.matches('a[href], button, input, select, textarea, summary, [tabindex]')) return true;
            if (getComputedStyle(one).cursor !== 'pointer') return false;
            // A frame that can be moved is no control, though it gets the focus.
            const held = one.closest('a[href], button, summary, label, [tabindex]');
            return !held || !(held.matches('a[href], button, summary, label') || getComputedStyle(held).cursor === 'pointer');
          });
          window.controls(document).forEach(one => plain.set(one, look(one)));
          document.addEventListener('focusin', event => {
            const one = event.target;
            seen.last = one;
            seen.reached.add(one);
            if (plain.has(one) && plain.get(one) === look(one)) seen.unseen.push(one);
            const frame = one.getBoundingClientRect();
            if (frame.right < 0 || frame.bottom < 0 || frame.left > innerWidth || frame.top > innerHeight) seen.unseen.push(one);
          });
          return window.controls(document).length;
        })()
        """;

    /// <summary>What cannot be reached, or gets the focus without a person's seeing it.</summary>
    public static async Task<string[]> NotReachedAsync(OpenPage page)
    {
        int count = await page.AskAsync<int>(Watch);
        for (int i = 0; i <= count; i++)
        {
            await page.Page.Keyboard.PressAsync("Tab");
            if (!await page.AskAsync<bool>("seen.last?.localName === 'summary' && !seen.last.parentElement.open"))
                continue;
            await page.Page.Keyboard.PressAsync("Enter");
            count += await page.AskAsync<int>("controls(seen.last.parentElement).length - 1");
        }

        return await page.AskAsync<string[]>("""
            [...controls(document).filter(one => !seen.reached.has(one)).map(one => 'not reached: ' + one.outerHTML.slice(0, 120)),
             ...seen.unseen.map(one => 'not seen: ' + one.outerHTML.slice(0, 120))]
            """);
    }
}
