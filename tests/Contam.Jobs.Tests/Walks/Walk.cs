using System.Collections.Immutable;
using Contam.Families;
using Contam.Jobs.Documents;
using Contam.Jobs.Stores;
using Contam.Jobs.Work;
using Contam.Measurement;

namespace Contam.Jobs.Tests.Walks;

/// <summary>A walk of a job through commands as hurried people give them, held against the model after each; and killed now and then.</summary>
internal sealed class Walk : IDisposable
{
    private readonly Random random;
    private readonly IJobStore place;
    private readonly List<string> told = [];
    private KilledStore store;
    private JobBook book;
    private JobRecord job;
    private readonly EngineModel model;
    private readonly Family family;

    private Walk(int number, IJobStore place)
    {
        random = new Random(number);
        this.place = place;
        store = new KilledStore(place);
        book = new JobBook(store);
        var signature = new Signature(new DateTimeOffset(2026, 5, 4, 9, 0, 0, TimeSpan.Zero).AddMinutes(number), "Ada");
        (JobToOpen? made, Refusal? refusal) = JobBook.Prepare(SmallFamily.Question(number), new JobHead($"walk {number}", "engine", "Ada"), signature);
        job = book.Open(made ?? throw new InvalidOperationException(refusal!.ToString())).After!;
        family = book.SystemOf(job).Family;
        model = new EngineModel(family, job.Plan);
    }

    /// <summary>How often the engine was released on walks so far; a walk that never gets there proves little.</summary>
    public int Releases { get; private set; }

    /// <summary>How often work had to be unticked and done again, since caution let nothing else through.</summary>
    public int Corners { get; private set; }

    /// <summary>How many outcomes of looks were accepted, and how many clean looks were void after one.</summary>
    public (int Said, int Void) Looks { get; private set; }

    /// <summary>How many commands were accepted.</summary>
    public int Accepted { get; private set; }

    /// <summary>Walks so many commands, then finishes the work in its turn up to the release, and has the whole record judged.</summary>
    /// <returns>The walk.</returns>
    /// <exception cref="WalkException">The record did what it must not; the message tells the walk.</exception>
    public static Walk Go(int number, int commands, IJobStore place)
    {
        var walk = new Walk(number, place);
        for (int left = commands; left > 0; left--)
            walk.Step(walk.Choose());
        walk.Finish();
        if (JobReplay.FirstWrong(walk.job.Id, walk.job.Bodies, walk.book.Text) is { } wrong)
            throw walk.Fault($"the rules do not give the record again: {wrong}");
        return walk;
    }

    public void Dispose()
    {
        book.Dispose();
        store.Dispose();
    }

    private void Step(Command command)
    {
        store.Next = random.Next(20) switch { 0 => Kill.Before, 1 => Kill.After, _ => Kill.None };
        JobRecord before = job;
        bool isAccepted;
        try
        {
            JobAnswer answer = command.Ask(book, job.Id);
            isAccepted = answer.IsAccepted;
            told.Add($"{command} {(isAccepted ? "ok" : answer.Refusal is WouldHarm harm ? harm.What : answer.Refusal!.GetType().Name)}");
        }
        catch (KilledException)
        {
            // Another process goes on; what was written, was.
            store = new KilledStore(place);
            book = new JobBook(store);
            isAccepted = book.Read(job.Id).Entries.Length > before.Entries.Length;
            told.Add($"{command} killed, {(isAccepted ? "written" : "not written")}");
        }

        store.Next = Kill.None;
        job = book.Read(job.Id);
        bool changed = job.Entries.Length > before.Entries.Length;
        if (isAccepted && (changed || command is Command.Release))
        {
            Accepted++;
            if (command is Command.Decide)
                Looks = (Looks.Said + 1, Looks.Void + job.State.LooksStand.Count(look => look.Standing == "void"));
            if (model.Take(command, before.Steps, job.Plan) is { } harm)
                throw Fault(harm);
        }

        if (command is Command.Release && isAccepted)
            Releases++;
        if (job.IsReleased && model.WhyNotRun(job.Steps) is { } why)
            throw Fault($"the record says that the engine may be run although {why}");
    }

    private Command Choose()
    {
        ImmutableArray<WorkStep> steps = job.Steps;
        int any = random.Next(steps.Length) + 1;
        string part = family.Parts[random.Next(family.Parts.Length)].Id.Value;
        Debris debris = random.Next(5) == 0 ? Debris.Water : Debris.Metal;
        // Looks decide what the rest is, so they come often.
        if (random.Next(10) == 0 && !job.Plan.Looks.IsEmpty)
            return Decide(job.Plan.Looks[random.Next(job.Plan.Looks.Length)].Id, again: random.Next(4) == 0);
        return random.Next(100) switch
        {
            < 58 when TickOrder.Now(job.State) is { IsEmpty: false } now => new Command.Tick(now[random.Next(now.Length)].Number, Anyway: false),
            < 66 => new Command.Tick(any, Anyway: true),
            < 70 => new Command.Untick(any),
            < 72 => new Command.Send(part),
            < 77 => new Command.Return(job.State.Away.IsEmpty ? part : job.State.Away[0]),
            < 87 => new Command.Measure(family.Limits[random.Next(family.Limits.Length)], random.Next(6) switch { 0 => Verdict.Reject, 1 => Verdict.Undecided, _ => Verdict.Good }),
            < 88 => new Command.Look(part, debris, Found: true),
            < 90 => new Command.Look(part, debris, Found: false),
            < 93 => new Command.Replan(),
            < 94 => new Command.Note(),
            _ => new Command.Release(),
        };
    }

    private Command.Decide Decide(string letter, bool again = false)
    {
        ImmutableArray<string> places = job.Plan.Looks.First(look => look.Id == letter).Places;
        LookOutcome outcome = random.Next(10) switch { < 6 => LookOutcome.Clean, < 9 => LookOutcome.Found, _ => LookOutcome.InDoubt };
        return new Command.Decide(letter, outcome, places[random.Next(places.Length)], random.Next(8) == 0 ? Debris.Water : Debris.Metal, again);
    }

    /// <summary>Caution must not become a wall: from wherever it stands the work can be brought to an end.</summary>
    private void Finish()
    {
        int stuck = 0;
        for (int round = 0; round < 2_000 && stuck < 50 && !job.IsReleased; round++)
        {
            JobState state = job.State;
            long before = job.Summary.Sequence;
            if (state.Unanswered.Any())
                Step(new Command.Replan());
            else if (!state.Away.IsEmpty)
                Step(new Command.Return(state.Away[0]));
            else if (state.Open.Any(step => step.IsBeforeRelease))
                TickOne(state);
            else if (book.Missing(job).FirstOrDefault(missing => family.Limits.Any(limit => missing.Text.Contains($"{limit.Id} at ", StringComparison.Ordinal))) is { } unread)
                Step(new Command.Measure(family.Limits.First(limit => unread.Text.Contains($"{limit.Id} at ", StringComparison.Ordinal)), Verdict.Good));
            else
                Step(new Command.Release());
            stuck = job.Summary.Sequence == before ? stuck + 1 : 0;
            if (stuck == 10 && job.State.Steps.All.Where(step => step.Action is StepAction.Flush or StepAction.Clean or StepAction.Replace or StepAction.Refit && job.State.IsDone(step)).ToArray() is { Length: > 0 } undone)
            {
                // What the refusal tells a person to do: a part that was put on out of turn comes off again, and what was flushed or cleaned before it was looked at is so again.
                Corners++;
                foreach (WorkStep step in undone)
                    Step(new Command.Untick(step.Number));
            }
        }

        if (!job.IsReleased)
            throw Fault($"the work cannot be brought to an end: {string.Join("; ", book.Missing(job).Select(missing => missing.Text).Take(4))}");
    }

    private void TickOne(JobState state)
    {
        foreach (WorkStep step in TickOrder.Now(state))
        {
            long before = job.Summary.Sequence;
            if (step.Looks.FirstOrDefault(look => !LookStandings.IsDecided(job.State.StandingOf(look))) is { } unsaid)
            {
                Step(Decide(unsaid));
                if (job.Summary.Sequence == before)
                    Step(new Command.Decide(unsaid, LookOutcome.InDoubt, null, Debris.Metal, Again: false));
            }
            else
            {
                Step(new Command.Tick(step.Number, Anyway: false));
                // What a look has to show may be gone; then it is in doubt.
                if (job.Summary.Sequence == before && !step.Looks.IsEmpty)
                    Step(new Command.Decide(step.Looks[0], LookOutcome.InDoubt, null, Debris.Metal, Again: true));
            }

            if (job.Summary.Sequence > before)
                return;
        }
    }

    private WalkException Fault(string what) => new($"{what}\nafter {told.Count} commands:\n{string.Join('\n', told.TakeLast(50))}\nlooks: {string.Join(", ", job.State.LooksStand)}\nsteps:\n{string.Join('\n', job.Steps.Select(step => $"{step.Number} {step.Key} after {string.Join(',', step.After)}{(job.State.IsDone(step) ? " done" : job.State.IsStruck(step) ? " struck" : "")} {string.Join(' ', step.OnlyIf)}{(step.Unless.IsEmpty ? "" : $" not {string.Join(' ', step.Unless)}")}{string.Concat(step.Looks.Select(look => $" is look {look}"))}"))}");
}

/// <summary>A walk came to what must not be.</summary>
internal sealed class WalkException(string message) : Exception(message);
