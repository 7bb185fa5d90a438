using System.Collections.Immutable;
using Contam.Families;
using Contam.Jobs.Work;
using Contam.Measurement;
using Contam.Measurement.Gauging;

namespace Contam.Jobs.Tests.Walks;

/// <summary>Something that somebody asks of a job.</summary>
internal abstract record Command
{
    protected static Signature Ada { get; } = new(new DateTimeOffset(2026, 5, 4, 12, 0, 0, TimeSpan.Zero), "Ada");

    /// <summary>Asks for it.</summary>
    public abstract JobAnswer Ask(JobBook book, string job);

    internal sealed record Tick(int Number, bool Anyway) : Command
    {
        public override JobAnswer Ask(JobBook book, string job) => book.Tick(job, Number, Ada, new TickWords { Anyway = Anyway ? "the owner waits" : null });
    }

    internal sealed record Untick(int Number) : Command
    {
        public override JobAnswer Ask(JobBook book, string job) => book.Untick(job, Number, "forgotten", Ada);
    }

    internal sealed record Send(string Part) : Command
    {
        public override JobAnswer Ask(JobBook book, string job) => book.Send(job, Part, Ada);
    }

    internal sealed record Return(string Part) : Command
    {
        public override JobAnswer Ask(JobBook book, string job) => book.Return(job, Part, Ada);
    }

    internal sealed record Measure(Limit Limit, Verdict Verdict) : Command
    {
        public override JobAnswer Ask(JobBook book, string job) => book.Measure(job, new GaugeAnswer(Limit, new Judgement(Verdict, Verdict, Verdict, "so it reads"), []), ["1bar"], Ada);
    }

    internal sealed record Look(string Part, Debris Debris, bool Found) : Command
    {
        public override JobAnswer Ask(JobBook book, string job) => book.Look(job, [new Finding(new PartId(Part), Debris, Found)], hasFailed: false, Ada);
    }

    internal sealed record Decide(string Letter, LookOutcome Outcome, string? At, Debris Debris, bool Again) : Command
    {
        public override JobAnswer Ask(JobBook book, string job) =>
            book.Decide(job, Letter, Outcome, Outcome == LookOutcome.Found ? [new Finding(new PartId(At!), Debris, Found: true)] : [], Again, Ada, new TickWords { Anyway = Again ? "the owner waits" : null });
    }

    internal sealed record Replan : Command
    {
        public override JobAnswer Ask(JobBook book, string job) => book.Propose(job, ImmutableArray<Finding>.Empty, hasFailed: false, Ada) is { Proposal: { } proposal } ? book.Take(proposal, Ada) : throw new InvalidOperationException("nothing was said that could be refused");
    }

    internal sealed record Note : Command
    {
        public override JobAnswer Ask(JobBook book, string job) => book.Note(job, "on the slip", Ada);
    }

    internal sealed record Release : Command
    {
        public override JobAnswer Ask(JobBook book, string job) => book.Release(job, Ada);
    }
}
