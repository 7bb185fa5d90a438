using Contam.Families;

namespace Contam.Authoring;

/// <summary>The way through one circuit: from what the fluid is kept in, part by part, then what branches off.</summary>
internal sealed class InterviewWalk(Interview interview, InterviewParts parts, string key, string circuit)
{
    // Whose leakage goes somewhere: a case drain, a leak-off, a vent.
    private static readonly string[] Leaking = ["pump", "injection-pump", "injector", "hydraulic-motor", "turbocharger", "compressor", "actuator", "regulator", "valve", "diaphragm"];

    private readonly List<string> met = [];

    public void Run()
    {
        interview.Ask($"{key} fluid", $"Which fluid runs in {circuit}?", "its name, for instance diesel or engine oil; Enter: air or exhaust", Fluid);
        string first = interview.Ask($"{key} start", "What does the fluid come from: a tank, a sump, the sea?", "the part's name; a part is named as you call it: oil tank", answer => Joined(answer, null), null);
        Follow($"{key} run 1", Meet(first));
        int run = 1;
        // The list grows while it is gone through.
        for (int i = 0; i < met.Count; i++)
        {
            for (int branch = 1; Branch(met[i], branch) is { Length: > 0 } to; branch++)
                Follow($"{key} run {++run}", Meet(to));
        }

        foreach (string part in met)
            parts.Describe(part);
        Close();
    }

    // From a part to whatever comes next, until a part that was met before or the end.
    private void Follow(string run, string at)
    {
        for (int step = 1; ; step++)
        {
            string from = at;
            string next = interview.Ask($"{run} step {step} after {from}", $"What comes next after {from} ({parts.KindOf(from)})?", "the part's name; end: nothing, it leaves here or is used up; ?: not known", answer => answer switch
            {
                "end" => null,
                "?" => text => FamilyEdit.Set(text, "parts", from, "meant", "{dead-end: 'not known where it leads: to be followed at the machine'}"),
                _ => Joined(answer, from),
            }, null);
            if (next is "end" or "?")
            {
                if (next == "end")
                    parts.End(from);
                return;
            }

            bool isNew = !met.Contains(Interview.Id(next, "a part"));
            at = Meet(next);
            // A part that a person has written leads on as the file says.
            if (!isNew || (parts.WasThere(at) && interview.Family!.Joints.Any(joint => joint.Circuit == circuit && joint.From.Value == at)))
                return;
        }
    }

    private string Branch(string part, int number)
    {
        bool leaks = number == 1 && parts.KindOf(part) is { } kind && Leaking.Contains(kind);
        string asked = leaks ? $"What else does {part} lead to, and where does its leakage go?" : $"What {(number == 1 ? "" : "more ")}does {part} lead to besides?";
        string answer = interview.Ask($"{key} besides {part} {number}", asked, "a part's name: a branch, a drain, a leak-off, a vent; Enter: nothing; ?: not known", typed => typed switch
        {
            "" or "nothing" or "no" => null,
            "?" => null,
            _ => Branching(typed, part),
        });
        return answer is "?" or "nothing" or "no" ? "" : answer;
    }

    // A new run from a part that stands on one already.
    private Func<string, string?> Branching(string typed, string from)
    {
        string id = Interview.Id(typed, "a part");
        Func<string, string?> named = parts.Named(typed);
        return text => named(text) is { } with && FamilyEdit.AddRun(with, circuit, from) is { } begun ? FamilyEdit.ExtendRun(begun, circuit, from, id) : null;
    }

    private Func<string, string?> Joined(string typed, string? from)
    {
        string id = Interview.Id(typed, "a part");
        if (id == from)
            throw new FormatException($"{id} does not lead to itself.");
        Func<string, string?> named = parts.Named(typed);
        return text => named(text) is { } with
            ? from is null ? FamilyEdit.AddRun(with, circuit, id) : FamilyEdit.ExtendRun(with, circuit, from, id) ?? (FamilyEdit.AddRun(with, circuit, from) is { } begun ? FamilyEdit.ExtendRun(begun, circuit, from, id) : null)
            : null;
    }

    private string Meet(string typed)
    {
        string id = Interview.Id(typed, "a part");
        if (!met.Contains(id))
            met.Add(id);
        parts.Kind(id, typed);
        return id;
    }

    private Func<string, string?>? Fluid(string answer)
    {
        if (answer is "" or "?")
            return null;
        string id = Interview.Id(answer, "a fluid");
        return text =>
        {
            // It may be there already, for another circuit.
            string? with = interview.Family is { } family && family.Fluids.Any(fluid => fluid.Id == id) ? text : FamilyEdit.AddEntry(text, "fluids", id, "{}");
            return with is null ? null : FamilyEdit.Set(with, "circuits", circuit, "fluid", id) ?? FamilyEdit.AddEntry(with, "circuits", circuit, $"\nfluid: {id}");
        };
    }

    // What a check would warn of is asked while the person stands at the machine.
    private void Close()
    {
        if (interview.Family is not { } family)
            return;
        foreach (Part tank in met.Select(id => family.Find(new PartId(id))).OfType<Part>().Where(part => part.Kind.IsReservoir).ToArray())
        {
            bool leaves = family.Joints.Any(joint => joint.Circuit == circuit && joint.From == tank.Id);
            bool comesBack = family.Joints.Any(joint => joint.Circuit == circuit && joint.To == tank.Id);
            if (!leaves || comesBack || family.Circuits.Any(one => one.Name == circuit && one.Meant.Any(meant => meant.Code == "does-not-close")))
                continue;
            string back = interview.Ask($"{key} back to {tank.Id}", $"Nothing brings {circuit} back to {tank.Id}. What leads back to it?", "a part that you have named; used up: nothing, the fluid is used up; ?: not known", answer => answer switch
            {
                "used up" => text => FamilyEdit.Set(text, "circuits", circuit, "meant", "{does-not-close: the fluid is used up}"),
                "?" => null,
                _ when interview.Family?.Find(new PartId(CellWords.Id(answer))) is null => throw new FormatException($"{CellWords.Id(answer)} is no part yet. Name one that there is; `tree` shows them."),
                _ => Branching(tank.Id.Value, CellWords.Id(answer)),
            }, null);
            if (back == "?")
                interview.Tell("It stays open; contam check warns of it until it is known.");
        }
    }
}
