namespace Contam.Procedure;

/// <summary>What a job is about where its action and part do not say it.</summary>
internal static class JobTopics
{
    public const string Order = "order";
    public const string Engine = "engine";
    public const string Cause = "cause";
    public const string Condition = "condition";
    public const string GoOn = "go on";
    public const string Arrival = "arrival";
    public const string FiltersNext = "filters next";
    public const string Prime = "prime";
    public const string Holds = "holds";
    public const string CleanPlaces = "clean places";
    public const string Crank = "crank";
    public const string LeakCheck = "leak check";
    public const string FirstRun = "first run";
    public const string SecondFilters = "second filters";
    public const string SecondLook = "second look";
}
