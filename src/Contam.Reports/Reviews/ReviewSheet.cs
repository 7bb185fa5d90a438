using System.Collections.Immutable;
using System.Globalization;
using Contam.Families;
using Contam.Reports.Text;
using Contam.Reviews;

namespace Contam.Reports.Reviews;

/// <summary>A section of a review.</summary>
/// <param name="Title">Its title.</param>
/// <param name="About">What is to be done with it.</param>
/// <param name="Items">What is to be ticked, each once.</param>
/// <param name="Trees">Whether the items are lines of trees, whose spaces count.</param>
internal sealed record ReviewSection(string Title, string About, ImmutableArray<string> Items, bool Trees = false);

/// <summary>What stands on the sheet of a review, whatever its form.</summary>
internal sealed class ReviewSheet
{
    private readonly FamilyReview review;
    private readonly Family family;
    private readonly Names names;
    private readonly TextLook look;

    public ReviewSheet(FamilyReview review, TextLook look)
    {
        this.review = review;
        this.look = look;
        family = review.Family;
        names = new Names(family);
        Sections = [FirstJoints(), .. family.Circuits.Select(Walk), Walls(), Meetings(), Returns(), Barriers(), Doubts()];
    }

    public string Title => $"Review: {(family.Title.Length > 0 ? $"{family.Title} ({family.Id})" : family.Id)}";

    public static string Purpose =>
        "For somebody who did not write the file. Stand at the machine, hold each line against it, and tick what is so. What is not so is written on this sheet and changed in the file; then a new sheet is made. A joint that nobody wrote down is a part that no plan will treat.";

    public string Scope => string.Create(CultureInfo.InvariantCulture, $"{family.Parts.Length} parts, {family.Joints.Length} joints, {family.Circuits.Length} circuits. File: {family.File}. SHA-256 of the file and its modules: {family.Sha256}");

    public ImmutableArray<ReviewSection> Sections { get; }

    public static string[] Signature =>
    [
        "Reviewed at the machine by: ______________________________",
        "Date: ____________________  Machine: ____________________",
        "Not so, or not seen: ______________________________________",
    ];

    public string HowToSign => $"When every line is ticked: contam review {family.File} --sign NAME";

    private ReviewSection FirstJoints()
    {
        const string title = "First: the joints on which most hangs";
        if (review.Joints is not { } joints)
            return new ReviewSection(title, "Not counted: the family is too large for it.", []);
        return new ReviewSection(
            title,
            "Each is left out in turn, and counted: how many plans (a part that sheds, and what it sheds) would change, and how many parts these would miss in all. Follow each with a finger.",
            [.. joints.Select(one => $"{JointsOf(one.Joints)}: {Number(one.Weight.Plans)} {Plural(one.Weight.Plans, "plan")}, {Number(one.Weight.Missed)} {Plural(one.Weight.Missed, "part")} missed{(one.Weight.Lowered > 0 ? $", {Number(one.Weight.Lowered)} taken as held back" : "")}{(one.Joints.Length > 1 ? ", each" : "")}")]);
    }

    private ReviewSection Walk(Circuit circuit) => new(
        $"Walk: {circuit.Name}{(circuit.Fluid is { } fluid ? $", {fluid}" : "")}",
        "Does each part lead to the next, to all that branch off here, and to nothing else?",
        [.. CircuitTree.Lines(family, circuit, look)],
        Trees: true);

    private ReviewSection Walls() => new(
        "Walls: what opens when something fails",
        "Is it this part that parts the two sides, and does nothing else join them?",
        [.. Together(review.Walls.Select(wall => (wall.Part, WallOf(wall))))]);

    private string WallOf(Wall wall)
    {
        string asked = !wall.PartsFluids ? "What shuts this way?"
            : wall.Sides.Length == 2 && !wall.Sides[0].Intersect(wall.Sides[1]).Any() ? $"What parts {AllOf(wall.Sides[0])} from {AllOf(wall.Sides[1])} here?"
            : $"What keeps {AllOf(wall.Sides.SelectMany(side => side).Distinct(StringComparer.Ordinal))} apart here?";
        return $"{asked} By the file: {names.InSentence(wall.Part.Value)}. When it fails: {string.Join("; ", wall.Opens.Select(joint => $"{names.InSentence(joint.From.Value)} > {names.InSentence(joint.To.Value)}").Distinct(StringComparer.Ordinal))}";
    }

    private ReviewSection Meetings() => new(
        "Where fluids meet although nothing has failed",
        "Whatever gets into one of them gets into the other. Is it so, or is there a wall?",
        [.. RepeatFolding.Fold(review.Meetings, meeting => names.NumberOf(meeting.Part.Value), meeting => $"{names.RepeatOf(meeting.Part.Value)} {string.Join(' ', meeting.Fluids)}").Select(group => $"{Start(names.Folded(group.Select(one => one.Part.Value)))}: {AllOf(group[0].Fluids)}")]);

    private ReviewSection Returns() => new(
        "Returns: what leads back",
        "A forgotten return is the usual fault. Is each there, and is there one more: case drain, relief, leak-off, breather, vent, drain-back?",
        [
            .. RepeatFolding.Fold(review.Returns, joint => names.NumberOf(joint.From.Value), joint => $"{joint.Circuit} {names.RepeatOf(joint.From.Value)} {joint.Place}").Select(group => JointsOf(group)),
            .. review.WithoutReturn.Select(circuit => $"Nothing leads back in {circuit.Name}. Is all of it used up, or does it go over the side or into the air?"),
        ]);

    private ReviewSection Barriers() => new(
        "Barriers: each figure with its source",
        "Where does the figure come from: a plate, the manual's page, a guess? Plans rely on those that say so.",
        [.. Together(review.Barriers.Select(barrier => (barrier.Part ?? barrier.Joint!.From, BarrierOf(barrier))))]);

    private string BarrierOf(BarrierFigure barrier)
    {
        string what = barrier.Part is { } part ? Start(names.InSentence(part.Value)) : DifferenceWords.Joint(barrier.Joint!, family);
        string figure = barrier.Debris is not { } debris ? $"hard pieces above {Size(barrier.Above)} stay" : barrier.Above == ParticleSize.Zero ? $"holds all {debris.Name}" : $"holds {debris.Name} above {Size(barrier.Above)}";
        return $"{what}: {figure}; {(barrier.IsReliedOn ? "relied on" : "not relied on")} ({barrier.Place.File}:{Number(barrier.Place.Line)}{(barrier.Comment.Length > 0 ? $": {barrier.Comment}" : "")}). Source: ____________________";
    }

    private ReviewSection Doubts() => new(
        "What the file does not know",
        "Each is read the cautious way. Can it be found out here?",
        [
            .. review.Doubts.Where(doubt => doubt.Kind != DoubtKind.ShedsNothing).GroupBy(doubt => DoubtWords(doubt), StringComparer.Ordinal).Select(group => group.Key),
            .. ShedsNothing(),
        ]);

    private string DoubtWords(Doubt doubt) => doubt.Kind switch
    {
        DoubtKind.Comment => $"{doubt.Place.File}:{Number(doubt.Place.Line)}: {doubt.About}",
        DoubtKind.HoldsNothing => $"{Alike(doubt)}: nothing is said of what it holds, so it counts as an open way",
        DoubtKind.NoRating => $"{Alike(doubt)}: its rating is not said, so it is not relied on",
        _ => $"{Alike(doubt)}: how large the {doubt.Debris!.Name} is that it sheds is not said, so any size is reckoned with",
    };

    private IEnumerable<string> ShedsNothing()
    {
        PartId[] silent = [.. review.Doubts.Where(doubt => doubt.Kind == DoubtKind.ShedsNothing).Select(doubt => new PartId(doubt.About))];
        if (silent.Length > 0)
            yield return $"By the file these shed nothing when they fail; is that so? {Start(DifferenceWords.Folded(silent, family, int.MaxValue))}";
    }

    /// <summary>Lines that differ only in the number of a repeated part are told once, with all its numbers.</summary>
    private IEnumerable<string> Together(IEnumerable<(PartId About, string Words)> lines) => RepeatFolding
        .Fold(lines, line => names.NumberOf(line.About.Value), line => names.Renumber(line.Words, names.NumberOf(line.About.Value), "#"))
        .Select(group => group.Count == 1
            ? group[0].Words
            : names.Renumber(group[0].Words, names.NumberOf(group[0].About.Value), RepeatFolding.Range(names.NumberOf(group[0].About.Value), names.NumberOf(group[^1].About.Value))));

    // Parts of one repeat are in doubt alike: they are described once.
    private string Alike(Doubt doubt) => names.RepeatOf(doubt.About) is { Length: > 0 } ? Start(names.WithoutNumber(doubt.About)) : Start(names.InSentence(doubt.About));

    private string JointsOf(IReadOnlyList<Joint> joints) => joints.Count == 1
        ? Start(DifferenceWords.Joint(joints[0], family))
        : $"{Start(Ends(joints.Select(joint => joint.From)))} > {Ends(joints.Select(joint => joint.To))} ({joints[0].Circuit})";

    private string Ends(IEnumerable<PartId> ends) => DifferenceWords.Folded(ends.Distinct(), family, int.MaxValue);

    private string Size(ParticleSize size) => UnitText.Size(size.Micrometres, look);

    private static string AllOf(IEnumerable<string> words) => words.ToArray() is { Length: > 1 } all ? $"{string.Join(", ", all[..^1])} and {all[^1]}" : string.Concat(words);

    private static string Start(string text) => text.Length == 0 ? text : char.ToUpperInvariant(text[0]) + text[1..];

    private static string Number(long number) => number.ToString(CultureInfo.InvariantCulture);

    private static string Plural(long count, string word) => count == 1 ? word : word + "s";
}
