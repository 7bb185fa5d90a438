using Contam.Families;
using Contam.Measurement.Wording;
using Contam.Problems;

namespace Contam.Lints;

/// <summary>What may be forgotten in the description of a part or a limit.</summary>
internal static class PartLints
{
    public static void Look(Family family, FlowMap map, LintSink sink)
    {
        bool[] leadsToALook = map.LeadingTo(part => part.Inspect is not null, joint => joint.OnlyIfFailed is null);
        ILookup<PartId?, Joint> opensWith = family.Joints.Where(joint => joint.OnlyIfFailed is not null).ToLookup(joint => joint.OnlyIfFailed);
        HashSet<string> filesThatNameCarriers = [.. family.Parts.Where(IsCarried).Select(part => part.Place.File)];
        for (int i = 0; i < family.Parts.Length; i++)
        {
            Part part = family.Parts[i];
            Barriers(part, sink);
            // A file that says nothing of carriers was written without them, and is not told so at every part.
            if (part.Kind.IsCarried && !IsCarried(part) && filesThatNameCarriers.Contains(part.Place.File))
                sink.At(LintCodes.NoCarrier, part, name => LintProblems.NoCarrier(part.Place, name, part.Kind.Name));
            // Where there is no circuit, that is what is told.
            if (!family.Circuits.IsEmpty && !part.Sheds.IsEmpty && !leadsToALook[i] && !LeadsToALookWhenFailed(family, part, [.. opensWith[part.Id]], leadsToALook))
                sink.At(LintCodes.NowhereToLook, part, name => LintProblems.NowhereToLook(part.Place, name, part.Sheds.Select(shed => shed.Debris.Name)));
            if (part.Inspect is { Minutes: null } look && part.Minutes.Inspect is null)
                sink.At(LintCodes.LookWithoutTime, part, name => LintProblems.LookWithoutTime(look.Place ?? part.Place, name));
            if (part.SendOut is { Days: null } away)
                sink.At(LintCodes.AwayWithoutDays, part, name => LintProblems.AwayWithoutDays(away.Place ?? part.Place, name));
        }

        foreach (Limit limit in family.Limits)
        {
            Part part = family[limit.Part];
            if (part.Kind.Measures is { } measures && !measures.Contains(limit.Measures))
            {
                sink.At(LintCodes.CannotBeMeasured, part, name => LintProblems.CannotBeMeasured(
                    limit.Place, name.EndsWith('#') ? LimitOfAll(limit, part) : limit.Id, name, part.Kind.Name, MeasureText.Of(limit.Measures)));
            }
        }
    }

    // A part sheds when it fails, and then the joints that wait for it are open. Followed one after another from the part itself.
    private static bool LeadsToALookWhenFailed(Family family, Part part, Joint[] opening, bool[] leadsToALook)
    {
        var reached = new HashSet<PartId> { part.Id };
        bool grew = opening.Length > 0;
        while (grew)
        {
            grew = false;
            foreach (Joint joint in opening.Where(joint => reached.Contains(joint.From)))
            {
                if (leadsToALook[family.IndexOf(joint.To)])
                    return true;
                grew |= reached.Add(joint.To);
            }
        }

        return false;
    }

    private static bool IsCarried(Part part) => part.RidesOn is not null || part.Assembly is not null || !part.StandsOn.IsEmpty;

    private static void Barriers(Part part, LintSink sink)
    {
        if (part.Kind.IsFilter && part.Holds.IsEmpty)
            sink.At(LintCodes.NoRating, part, name => LintProblems.HoldsNothing(part.Place, name, part.Kind.Name));
        else if (!part.Holds.IsEmpty && !part.RatingIsSaid)
            sink.At(LintCodes.NoRating, part, name => LintProblems.NoRating(part.Place, name));
        if (!part.Holds.IsEmpty && part.HasAbsoluteRating && part.HasBypass)
            sink.At(LintCodes.BypassReliedOn, part, name => LintProblems.BypassReliedOn(part.Place, name));
    }

    // A limit on a repeated part bears the number of its part; for all of them it is written without.
    private static string LimitOfAll(Limit limit, Part part)
    {
        string tail = "-" + part.RepeatIndex.ToString(System.Globalization.CultureInfo.InvariantCulture);
        return limit.Id.EndsWith(tail, StringComparison.Ordinal) ? limit.Id[..^tail.Length] : limit.Id;
    }
}
