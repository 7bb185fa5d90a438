namespace Contam.Families.Reading.Shapes;

/// <summary>The keys of minutes by task.</summary>
internal static class MinutesKeys
{
    public static readonly Key<double> Inspect = Task("inspect", "looking at it", "10");
    public static readonly Key<double> Remove = Task("remove", "taking it off", "40");
    public static readonly Key<double> Flush = Task("flush", "flushing it", "15");
    public static readonly Key<double> Clean = Task("clean", "cleaning it by hand", "20");
    public static readonly Key<double> Test = Task("test", "testing it", "30");
    public static readonly Key<double> Replace = Task("replace", "checking the new one against the old one and making it ready", "10");
    public static readonly Key<double> Refit = Task("refit", "putting it back", "50");

    /// <summary>Minutes by task.</summary>
    public static readonly FormShape Shape = new("minutes", "minutes by task", Inspect, Remove, Flush, Clean, Test, Replace, Refit)
    {
        Means = "Minutes of a technician's time, by task",
    };

    /// <summary>What a form says.</summary>
    public static TaskMinutes Read(Form form) => new()
    {
        Inspect = form.Find(Inspect),
        Remove = form.Find(Remove),
        Flush = form.Find(Flush),
        Clean = form.Find(Clean),
        Test = form.Find(Test),
        Replace = form.Find(Replace),
        Refit = form.Find(Refit),
    };

    private static Key<double> Task(string name, string doing, string example) =>
        new(new NumberShape("minutes")) { Name = name, Means = $"Minutes for {doing}", Example = example };
}
