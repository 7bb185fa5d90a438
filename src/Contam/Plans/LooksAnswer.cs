using System.Collections.Immutable;

namespace Contam.Plans;

/// <summary>How far to go: which looks decide, what is sure, and what hangs on which look. Times are a technician's minutes.</summary>
/// <param name="Looks">The deciding looks, in order of work; empty where looking decides nothing that pays.</param>
/// <param name="Parts">Every part that the debris reaches or could have reached, in the order of the family.</param>
/// <param name="Minutes">What it takes.</param>
/// <param name="Chosen">How the looks came to be chosen.</param>
/// <param name="Outcomes">In how many ways the looks can come out, 1 where there are none.</param>
public sealed record LooksAnswer(ImmutableArray<LookToMake> Looks, ImmutableArray<PartOfLooks> Parts, LooksMinutes Minutes, LooksChosen Chosen, int Outcomes)
{
    /// <summary>At how many places a clean look would count.</summary>
    public required int PlacesThatCount { get; init; }
}

/// <summary>How the looks came to be chosen.</summary>
public enum LooksChosen
{
    /// <summary>They were named by the person who asks.</summary>
    Named,

    /// <summary>Every choice of the places that could pay was tried.</summary>
    OfAll,

    /// <summary>There are too many choices; the best that a search came to.</summary>
    BySearch,
}

/// <summary>A deciding look.</summary>
/// <param name="Letter">Its letter, A for the first.</param>
/// <param name="Places">The ids of the places; several are like places that are looked at together.</param>
/// <param name="Debris">The debris that it is for.</param>
/// <param name="When">When it is made; on earlier looks only.</param>
/// <param name="Minutes">For the look at all its places, with what comes off for them alone.</param>
/// <param name="Odds">The chance of a find where it is made, from 0 to 1: a product of shares of common practice, good for ranking only.</param>
/// <param name="MinutesHanging">Of every treatment that hangs on it.</param>
/// <param name="Clears">The ids of the parts that may be left alone on the strength of it.</param>
public sealed record LookToMake(
    char Letter, ImmutableArray<string> Places, ImmutableArray<string> Debris, LookCondition When, double Minutes, double Odds, double MinutesHanging, ImmutableArray<string> Clears);

/// <summary>What one part needs as the looks come out.</summary>
/// <param name="Id">Its id.</param>
/// <param name="When">When it is treated at all; <c>null</c> where what was seen before clears it.</param>
/// <param name="Treatments">Its treatments, each with when it is done.</param>
public sealed record PartOfLooks(string Id, LookCondition? When, ImmutableArray<TreatmentOfLooks> Treatments);

/// <summary>A treatment, and when it is done.</summary>
public sealed record TreatmentOfLooks(TreatmentKind Treatment, LookCondition When);

/// <summary>A technician's minutes for looks and treatments, with taking off and refitting, without what is only in the way of a treatment.</summary>
/// <param name="AllClean">Where every look is clean: what is sure.</param>
/// <param name="Expected">To be expected, by shares of common practice.</param>
/// <param name="Most">Where the looks come out worst.</param>
/// <param name="WithoutLooking">Where everything that could be reached is treated.</param>
public sealed record LooksMinutes(double AllClean, double Expected, double Most, double WithoutLooking);
