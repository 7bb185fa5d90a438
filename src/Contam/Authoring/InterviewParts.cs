using Contam.Families;
using Contam.Problems;

namespace Contam.Authoring;

/// <summary>What is asked of single parts: the kind, and once the way is known what each sheds, holds, needs off, rides on, and where to look.</summary>
internal sealed class InterviewParts(Interview interview, Catalogue catalogue)
{
    private const int MostOffered = 8;
    private readonly HashSet<string> old = [.. (interview.Kept(Interview.Before) ?? "").Split(' ')];
    private readonly Dictionary<string, int> again = new(StringComparer.Ordinal);

    /// <summary>Whether the file had this part before the interview, so that a person has described it.</summary>
    public bool WasThere(string id) => old.Contains(id) && interview.Family?.Find(new PartId(id)) is not null;

    /// <summary>The name of the kind of a part; <c>null</c> where there is no such part.</summary>
    public string? KindOf(string id) => interview.Family?.Find(new PartId(id))?.Kind.Name;

    /// <summary>Adds a part that is not there yet, with the kind that its name ends in.</summary>
    public Func<string, string?> Named(string typed)
    {
        string id = Interview.Id(typed, "a part");
        if (interview.Family is not { } family)
            throw new FormatException("The file cannot be read just now: correct it first, contam check says how.");
        if (family.Find(new PartId(id)) is not null)
            return text => text;
        if (NearName.Of(id, family.Parts.Select(part => part.Id.Value)) is { } near && !(id.Length == near.Length && id.Zip(near).Where(pair => pair.First != pair.Second).All(pair => char.IsAsciiDigit(pair.First) && char.IsAsciiDigit(pair.Second))) && !typed.EndsWith('!'))
            throw new FormatException($"Is that {near}, which you have named? Then write {near}. If it is another part, write it with a mark behind it: {typed}!");
        string kind = KindIn(id) ?? "housing";
        string name = typed.TrimEnd('!').Trim();
        string said = name == id || string.Equals(name, FamilyTables.DefaultName(id), StringComparison.OrdinalIgnoreCase) ? "" : $"\nname: {YamlWords.Of(name)}";
        return text => FamilyEdit.AddEntry(text, "parts", id, $"\nkind: {kind}{said}");
    }

    /// <summary>Asks what sort of part it is, where its name does not say.</summary>
    public void Kind(string id, string typed)
    {
        if (WasThere(id) || !IsThere(id))
            return;
        if (KindIn(id) is not null)
            return;
        interview.Ask($"kind of {id}", $"What sort of part is {typed.TrimEnd('!')}?", "a kind, or a word of it to be shown those that there are; like PART: as a part that you have described; ?: not known", answer =>
        {
            if (answer == "?")
                return text => Noted(text, id, "its kind is not known; housing is the plainest");
            if (answer.StartsWith("like ", StringComparison.OrdinalIgnoreCase))
                return Like(id, CellWords.Id(answer["like ".Length..].Trim()));
            string kind = CellWords.Id(answer);
            return catalogue.FindKind(kind) is not null ? text => FamilyEdit.Set(text, "parts", id, "kind", kind) : throw new FormatException(Offered(kind));
        }, null);
    }

    /// <summary>Asks the rest about a part.</summary>
    public void Describe(string id)
    {
        if (WasThere(id) || interview.Family?.Find(new PartId(id)) is not { } part || IsCopied(id))
            return;
        string turn = again.TryGetValue(id, out int times) ? $" again {times}" : "";
        if (part.Kind.IsFilter || part.Kind.Name is "strainer" or "screen" or "separator" or "magnetic-plug")
            Holds(id, turn);
        interview.Ask($"sheds of {id}{turn}", $"Can {id} shed metal, rubber or water when it fails?", "for instance metal; or metal common 500 um, rubber rare; Enter: no; ?: not known", answer => answer switch
        {
            "" or "no" => null,
            "?" => text => FamilyEdit.Set(text, "parts", id, "sheds", $"{{{string.Join(", ", catalogue.Debris.Select(debris => debris.Name + ": rare"))}}}   # not known, so each is reckoned with"),
            _ => Setting(id, "sheds", Sheds(answer)),
        });
        interview.Ask($"access of {id}{turn}", $"What must be off before {id} can be got at?", "parts that you have named, with commas; Enter: nothing; ?: not known", answer => answer switch
        {
            "" or "nothing" or "no" => null,
            "?" => text => Noted(text, id, "what must be off before it is not known"),
            _ => Setting(id, "access", YamlWords.List(PartsIn(answer, id))),
        });
        if (part.Kind.IsCarried)
        {
            interview.Ask($"carrier of {id}{turn}", $"What is {id} carried by?", "a part that it rides on; or stands on PART, or inside PART; Enter: nothing that is here; ?: not known", answer => answer switch
            {
                "" or "nothing" or "no" => null,
                "?" => text => Noted(text, id, "what it sits on is not known"),
                _ when answer.StartsWith("stands on ", StringComparison.OrdinalIgnoreCase) => Setting(id, "stands-on", YamlWords.List(PartsIn(answer["stands on ".Length..], id))),
                _ when answer.StartsWith("inside ", StringComparison.OrdinalIgnoreCase) => Setting(id, "assembly", PartsIn(answer["inside ".Length..], id)[0]),
                _ => Setting(id, "rides-on", PartsIn(answer.StartsWith("rides on ", StringComparison.OrdinalIgnoreCase) ? answer["rides on ".Length..] : answer, id)[0]),
            });
        }

        interview.Ask($"look of {id}{turn}", $"Is there a place to look for debris at {id}?", "minutes, how well it shows (good, fair, poor), and how: 10 good draw half a litre; Enter: no; ?: not known", answer => answer switch
        {
            "" or "no" => null,
            "?" => text => Noted(text, id, "whether debris can be looked for here is not known"),
            _ => Setting(id, "inspect", Look(answer)),
        });
    }

    /// <summary>Asks a part's questions anew; what is answered takes the place of what was said.</summary>
    public void Again(string id)
    {
        again[id] = again.GetValueOrDefault(id) + 1;
        while (IsAnswered($"sheds of {id} again {again[id]}"))
            again[id]++;
        old.Remove(id);
        interview.Ask($"kind of {id} again {again[id]}", $"What sort of part is {id}?", $"a kind; Enter: {KindOf(id)}, as it is", answer => answer.Length == 0 ? null
            : catalogue.FindKind(CellWords.Id(answer)) is not null ? text => FamilyEdit.Set(text, "parts", id, "kind", CellWords.Id(answer)) : throw new FormatException(Offered(CellWords.Id(answer))));
        Describe(id);
    }

    /// <summary>A run ends at a part: says so where fluid cannot end in such a part.</summary>
    public void End(string id)
    {
        if (interview.Family?.Find(new PartId(id)) is { Kind.FluidMayEnd: false } part && part.Meant.IsEmpty)
        {
            interview.Ask($"end at {id}", $"Where does it go from {id}: over the side, into the air, is it used up?", "in a few words; ?: not known", answer => answer == "?"
                ? text => FamilyEdit.Set(text, "parts", id, "meant", "{dead-end: 'not known where it leads: to be followed at the machine'}")
                : text => FamilyEdit.Set(text, "parts", id, "meant", $"{{dead-end: {YamlWords.Of(answer)}}}"), null);
        }
    }

    private void Holds(string id, string turn)
    {
        string held = interview.Ask($"holds of {id}{turn}", $"Does {id} hold anything back?", "for instance metal 30 um; or metal 10 um, water all; Enter: no; ?: not known, which counts as nothing", answer => answer switch
        {
            "" or "no" => null,
            "?" => text => Noted(text, id, "what it holds is not known, so it counts as nothing"),
            _ => Setting(id, "holds", Pairs(answer)),
        });
        if (held is "" or "no" or "?")
            return;
        interview.Ask($"rating of {id}{turn}", "Does its maker call that absolute?", "yes, or no: nominal; ?: not known, which counts as nominal", answer => answer.ToLowerInvariant() switch
        {
            "yes" or "absolute" => text => FamilyEdit.Set(text, "parts", id, "rating", "absolute"),
            "no" or "nominal" or "?" => text => FamilyEdit.Set(text, "parts", id, "rating", answer == "?" ? "nominal   # not known" : "nominal"),
            _ => throw new FormatException("Write yes or no."),
        }, null);
        interview.Ask($"bypass of {id}{turn}", "Does it open past itself when it is clogged or cold?", "yes or no; ?: not known, which counts as yes", answer => answer.ToLowerInvariant() switch
        {
            "yes" => text => FamilyEdit.Set(text, "parts", id, "bypass", "true"),
            "?" => text => FamilyEdit.Set(text, "parts", id, "bypass", "true   # not known, so it is not relied on"),
            "no" => null,
            _ => throw new FormatException("Write yes or no."),
        }, null);
    }

    private Func<string, string?> Like(string id, string other)
    {
        if (interview.Family?.Find(new PartId(other)) is not { } part)
            throw new FormatException($"There is no part {other} yet.");
        (string Key, string Value)[] keys = [.. PartCopy.Of(part)];
        return text => keys.Aggregate((string?)text, (so, key) => so is null ? null : FamilyEdit.Set(so, "parts", id, key.Key, key.Value));
    }

    private bool IsCopied(string id) => interview.Kept($"kind of {id}")?.StartsWith("like ", StringComparison.OrdinalIgnoreCase) == true && !again.ContainsKey(id);

    private bool IsAnswered(string key) => interview.Kept(key) is not null;

    private bool IsThere(string id) => interview.Family?.Find(new PartId(id)) is not null;

    private static Func<string, string?> Setting(string id, string key, string value) => text => FamilyEdit.Set(text, "parts", id, key, value);

    private static string? Noted(string text, string id, string note) => FamilyEdit.Note(text, "parts", id, note);

    private string Sheds(string answer)
    {
        var problems = new ProblemList(1);
        string? value = CellWords.Sheds(answer.Replace(',', ';'), default, problems);
        return Known(value, problems);
    }

    private string Pairs(string answer)
    {
        var problems = new ProblemList(1);
        return Known(CellWords.Pairs(answer.Replace(',', ';'), "metal 30 um", default, problems), problems);
    }

    private string Known(string? value, ProblemList problems)
    {
        if (value is null)
            throw new FormatException($"{problems.ToSorted()[0].Text[(problems.ToSorted()[0].Text.IndexOf(": ", StringComparison.Ordinal) + 2)..]}: {problems.ToSorted()[0].Mend}.");
        // The reader's own words for what does not fit.
        string probe = $"format: 1\nfamily: probe\nparts:\n  probe: {{kind: {catalogue.Kinds[0].Name}, {(value.Contains(": rare", StringComparison.Ordinal) || value.Contains(": occasional", StringComparison.Ordinal) || value.Contains(": common", StringComparison.Ordinal) ? "sheds" : "holds")}: {value}}}\n";
        Problem? wrong = Families.Reading.FamilyReader.ReadText(probe, "probe.yaml", catalogue).Problems.FirstOrDefault(problem => problem.Severity == Severity.Error);
        return wrong is null ? value : throw new FormatException($"{char.ToUpperInvariant(wrong.Text[0])}{wrong.Text[1..]}: {wrong.Mend}");
    }

    private string[] PartsIn(string answer, string self)
    {
        string[] ids = [.. answer.Split([',', ';'], StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries).Select(CellWords.Id)];
        Family family = interview.Family ?? throw new FormatException("The file cannot be read just now: correct it first, contam check says how.");
        foreach (string id in ids)
        {
            if (id == self)
                throw new FormatException($"{id} is not off before itself.");
            if (family.Find(new PartId(id)) is null)
                throw new FormatException($"There is no part {id} yet.{(NearName.Of(id, family.Parts.Select(part => part.Id.Value)) is { } near ? $" Did you mean {near}?" : " Name those that there are; what comes later can be said with change " + self + ".")}");
        }

        return ids.Length > 0 ? ids : throw new FormatException("Name a part.");
    }

    private static string Look(string answer)
    {
        string[] words = answer.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        if (words.Length < 2 || !double.TryParse(words[0], System.Globalization.NumberStyles.AllowDecimalPoint, System.Globalization.CultureInfo.InvariantCulture, out double minutes) || words[1].ToLowerInvariant() is not ("good" or "fair" or "poor"))
            throw new FormatException("Write the minutes, then good, fair or poor, then how it is done: 10 good draw half a litre into a clear jar");
        string how = string.Join(' ', words.Skip(2));
        return string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{{minutes: {minutes}, shows: {words[1].ToLowerInvariant()}{(how.Length > 0 ? ", how: " + YamlWords.Of(how) : "")}}}");
    }

    private string Offered(string typed)
    {
        string[] fitting = [.. catalogue.Kinds.Where(kind => kind.Name.Contains(typed, StringComparison.Ordinal) || kind.About.Contains(typed.Replace('-', ' '), StringComparison.OrdinalIgnoreCase)).Select(kind => kind.Name).Concat(NearName.AllOf(typed, catalogue.Kinds.Select(kind => kind.Name), MostOffered)).Distinct().Take(MostOffered)];
        return fitting.Length == 0
            ? $"There is no kind like that. There are {string.Join(", ", catalogue.Kinds.Select(kind => kind.Name))}."
            : "Which of these? " + string.Join("; ", fitting.Select(kind => $"{kind}: {catalogue.FindKind(kind)!.About}")) + ".";
    }

    private string? KindIn(string id)
    {
        string bare = id.TrimEnd('0', '1', '2', '3', '4', '5', '6', '7', '8', '9').TrimEnd('-');
        return catalogue.Kinds.Select(kind => kind.Name).Where(kind => bare == kind || bare.EndsWith("-" + kind, StringComparison.Ordinal)).MaxBy(kind => kind.Length);
    }
}
