using System.Globalization;
using Contam.Families;
using Contam.Measurement.Wording;
using Contam.Spread;

namespace Contam.Procedure;

/// <summary>The words of the steps that frame a procedure: order, make safe, confirm and prove. Common practice, no source, unless a caution beside them says otherwise.</summary>
internal sealed class FrameTexts
{
    private const int MostNamed = 8;

    private readonly ProcedureRequest request;
    private readonly string debris;
    private readonly double firstRunningHours;
    private readonly string hours;

    public FrameTexts(ProcedureRequest request)
    {
        this.request = request;
        debris = Sentences.List(request.Spreads.Select(spread => spread.Debris.Name));
        firstRunningHours = (request.Standard.FirstRunningHours ?? TimeSpan.FromHours(5)).TotalHours;
        hours = firstRunningHours.ToString("0.#", CultureInfo.InvariantCulture);
    }

    /// <summary>The running hours after which a job is due: 0 for the first run itself; <c>null</c> where it must be done before the engine is started.</summary>
    public double? DueAfterRunningHours(Job job) => job.Topic switch
    {
        JobTopics.FirstRun => 0,
        JobTopics.SecondFilters or JobTopics.SecondLook => firstRunningHours,
        _ => null,
    };

    /// <summary>The text of a frame step, or <c>null</c> where the standard words the step.</summary>
    public string? Write(Job job)
    {
        if (job.Topic.StartsWith(JobTopics.FiltersNext, StringComparison.Ordinal))
            return $"Hold point: everything else in the {job.Topic[(JobTopics.FiltersNext.Length + 1)..]} circuit is clean and back. Only now its filters go in.";
        return job.Topic switch
        {
            JobTopics.Order => OrderText(),
            JobTopics.Engine => "Stop the engine and keep it stopped: battery off, key out, a tag on the helm or panel. Let it cool. The engine may not be run again before every step of the phases before prove is ticked.",
            JobTopics.Cause => CauseText(job.Part!),
            JobTopics.Condition => ConditionText(job),
            JobTopics.GoOn => $"Decide: does what you have seen fit this plan? If another part has failed, or other debris than {debris} is there, stop and plan again with it.",
            JobTopics.CleanPlaces => CleanPlacesText(job.CleanPlaces!),
            JobTopics.Holds => "Before any fluid goes in, try what must hold: " + string.Join("; ", job.Parts.Select(HoldText)) + ". One that does not hold is opened again.",
            JobTopics.Arrival => $"Wait for the new {Sentences.InSentence(job.Part!.Name)}, ordered in the first step: {job.Part.Lead!.Value.TotalDays.ToString("0.#", CultureInfo.InvariantCulture)} d.",
            JobTopics.Prime => "Fill with new fluids and prime by hand until no air comes, ignition and fuel supply still off.",
            JobTopics.Crank => "Turn the engine over with the fuel supply shut and the ignition off, and catch what comes out at the outlets that can be opened, on white cloth. Particles on it: stop, the clean-out is not done.",
            JobTopics.LeakCheck => "Leak check: bring every opened circuit to its working pressure and look at every joint that was opened.",
            JobTopics.FirstRun => "First run at idle, with somebody at the stop. Watch oil pressure, temperature, charge light, noise and smoke; stop at once if one is not as it should be. Look for leaks again.",
            JobTopics.SecondFilters => $"After the first {hours} running hours change or clean again: {Names(job)}. Cut the old ones open and look. Fresh {debris} in them: stop and plan again.",
            JobTopics.SecondLook => SecondLookText(job),
            _ => null,
        };
    }

    private string HoldText(Part part) => LimitFigures.For(request.Family, part) is { } figures
        ? $"{Sentences.InSentence(part.Name)} ({Sentences.Clause(figures)})"
        : Sentences.InSentence(part.Name);

    private static string CleanPlacesText(CleanPlaces places)
    {
        IEnumerable<string> each = places.Places.Select(place =>
            $"{Sentences.InSentence(place.Place.Name)} would clear {Sentences.ListUpTo(MostNamed, Sentences.FoldedNames(place.Clears))}");
        return $"To save work, look first where all {places.Debris.Name} must pass. Found clean, {string.Join("; ", each)}. Plan again with --clean for each; what is found there instead is planned with --found.";
    }

    private static string Names(Job job) => Sentences.Names(job.Parts);

    private string SecondLookText(Job job) => job.Parts.IsEmpty
        ? $"After the first {hours} running hours look again at what was drained from every opened circuit."
        : $"After the first {hours} running hours look again at: {Names(job)}. All clean: the clean-out is proved.";

    private string OrderText()
    {
        Part[] renewed = [.. request.Treatments.Where(treated => treated.Treatments.Contains(TreatmentKind.Replace)).Select(treated => treated.Part)];
        Part? slowest = renewed.Where(part => part.Lead is not null).MaxBy(part => part.Lead!.Value);
        return slowest is null
            ? "Order what the list at the end names, so that it is there when the work comes to it."
            : $"Order what the list at the end names, first {Sentences.InSentence(slowest.Name)}, which takes {slowest.Lead!.Value.TotalDays.ToString("0.#", CultureInfo.InvariantCulture)} d to come.";
    }

    private string CauseText(Part failed)
    {
        Part[] upstream = [.. UpstreamThatSheds(failed)];
        return upstream.Length == 0
            ? $"Find what made {Sentences.InSentence(failed.Name)} fail, and put it right. Nothing upstream of it is known to shed {debris}."
            : $"Find what made {Sentences.InSentence(failed.Name)} fail, and put it right. Upstream of it and able to shed {debris}: {Sentences.Names(upstream)}. If one of these has failed, plan again with it.";
    }

    /// <summary>Parts from which the failed part can be reached and that shed this debris, in the order of the family.</summary>
    private IEnumerable<Part> UpstreamThatSheds(Part failed)
    {
        Family family = request.Family;
        var isFailed = request.Failed.ToHashSet();
        ILookup<PartId, PartId> into = family.Joints.Where(joint => SpreadGraph.IsOpen(family, joint, isFailed)).ToLookup(joint => joint.To, joint => joint.From);
        var upstream = new HashSet<PartId> { failed.Id };
        var queue = new Queue<PartId>(upstream);
        while (queue.TryDequeue(out PartId id))
        {
            foreach (PartId from in into[id])
            {
                if (upstream.Add(from))
                    queue.Enqueue(from);
            }
        }

        return family.Parts.Where(part => !isFailed.Contains(part.Id) && upstream.Contains(part.Id) && request.Spreads.Any(spread => part.ShedOf(spread.Debris) is not null));
    }

    private string ConditionText(Job job)
    {
        int reached = request.Spreads.SelectMany(spread => spread.Conditional).SelectMany(one => one.Parts).Distinct().Count();
        return string.Create(
            CultureInfo.InvariantCulture,
            $"Look, as far as can be seen before anything is opened, for signs that one of these has failed too: {Sentences.Names(job.Parts)}. Each would carry {debris} further, to {reached} more {(reached == 1 ? "part" : "parts")} in all: plan again with it.");
    }
}
