using Contam.Treatment;

namespace Contam.Procedure;

/// <summary>Which text and which method of a standard a job gets: the closest that fits.</summary>
internal sealed class WordingBook
{
    private readonly ShopStandard standard;
    private readonly Bearing bearing;
    private readonly StepWording[] closestFirst;

    public WordingBook(ShopStandard standard, Bearing bearing)
    {
        this.standard = standard;
        this.bearing = bearing;
        closestFirst = [.. standard.Texts.OrderByDescending(text => Bearing.Closeness(text.For))];
    }

    /// <summary>The text; <c>null</c> where the standard has none.</summary>
    public StepWording? TextFor(Job job) => closestFirst.FirstOrDefault(text => bearing.Words(text.For, job.WordedAs ?? job));

    /// <summary>The method of this id; <c>null</c> where none fits.</summary>
    public Method? MethodFor(string id, Job job) =>
        standard.Methods.Where(method => method.Id == id && (method.For == BearsOn.Everything || bearing.Words(method.For, job.WordedAs ?? job))).MaxBy(method => Bearing.Closeness(method.For));
}
