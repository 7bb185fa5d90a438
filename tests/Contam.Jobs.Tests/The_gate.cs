using System.Reflection;
using Contam.Jobs.Stores;

namespace Contam.Jobs.Tests;

/// <summary>The record has one door. Whatever else the assembly shows, nobody outside it can put an entry into a job.</summary>
public class The_gate
{
    private static readonly Assembly Record = typeof(JobBook).Assembly;

    private static IEnumerable<Type> Shown => Record.GetExportedTypes();

    [Fact]
    public void Is_not_open_to_the_command() =>
        Assert.DoesNotContain(Record.GetCustomAttributes<System.Runtime.CompilerServices.InternalsVisibleToAttribute>(), one => one.AssemblyName == "Contam.Cli");

    [Theory]
    [InlineData("Contam.Jobs.Entries")]
    [InlineData("Contam.Jobs.Stores")]
    public void Shows_no_entry_and_no_store(string room) =>
        Assert.Equal(room == "Contam.Jobs.Stores" ? ["ShopException", "ShopFault", "ShopUse", "ShopWords"] : Array.Empty<string>(), Shown.Where(type => type.Namespace == room).Select(type => type.Name).Order(StringComparer.Ordinal));

    [Fact]
    public void Gives_out_no_state_that_could_be_changed_and_handed_back()
    {
        Type[] made = [typeof(JobRecord), typeof(JobAnswer), typeof(Proposal), typeof(Work.PlanChange), typeof(JobToOpen), typeof(JobBook)];
        Assert.All(made, type =>
        {
            Assert.Empty(type.GetConstructors(BindingFlags.Instance | BindingFlags.Public));
            Assert.All(type.GetProperties(BindingFlags.Instance | BindingFlags.Public), property => Assert.False(property.SetMethod?.IsPublic ?? false, $"{type.Name}.{property.Name} can be set"));
        });
    }

    [Fact]
    public void Lets_nothing_write_but_what_goes_through_the_rules()
    {
        // Every public method that takes a book, or is one of its own: the list is read by a person when it grows.
        string[] doors =
        [
            .. Shown.SelectMany(type => type.GetMethods(BindingFlags.Public | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly)
                .Where(method => !method.IsSpecialName && (type == typeof(JobBook) || method.GetParameters().Any(one => one.ParameterType == typeof(JobBook))))
                .Select(method => $"{type.Name}.{method.Name}")).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal),
        ];
        Assert.Equal(
            [
                "HistoryAnswer.Of", "JobBook.Decide", "JobBook.Dispose", "JobBook.Find", "JobBook.List", "JobBook.Look", "JobBook.Measure", "JobBook.Missing", "JobBook.Note", "JobBook.Open",
                "JobBook.Photo", "JobBook.Prepare", "JobBook.Propose", "JobBook.Read", "JobBook.Release", "JobBook.Return", "JobBook.Send", "JobBook.Supply", "JobBook.SystemOf", "JobBook.Take", "JobBook.Tick",
                "JobBook.Untick", "JobJson.Export", "JobJson.ExportDamaged", "JobJson.Import", "ShopCheck.Of", "ShopCopy.Backup", "ShopHistory.CountsFor",
            ],
            doors);
    }

    [Fact]
    public void Stays_shut_whatever_is_asked_of_a_job_on_which_nothing_was_done()
    {
        using JobBench bench = JobBench.WithJob();
        using JobBook book = JobBook.Open(bench.Shop, ShopUse.Write);
        string id = book.List()[0].Id;
        var signature = new Signature(DateTimeOffset.UnixEpoch, "Eve");
        Assert.IsType<NotComplete>(book.Release(id, signature).Refusal);
        foreach (Work.WorkStep step in book.Read(id).Steps.Where(step => step.Phase == Phase.Prove || step.Action == StepAction.Refit))
        {
            Refusal? refusal = book.Tick(id, step.Number, signature, new TickWords { Anyway = "the owner waits" }).Refusal;
            if (step.Action != StepAction.Note)
                Assert.True(refusal is WouldHarm or RunsTheEngine, $"step {step.Number}: {refusal}");
        }

        Assert.Equal("open", book.Read(id).Summary.State);
        Assert.False(book.Read(id).IsReleased);
    }

    [Fact]
    public void Does_not_take_a_proposal_twice()
    {
        using JobBench bench = JobBench.WithJob();
        using JobBook book = JobBook.Open(bench.Shop, ShopUse.Write);
        string id = book.List()[0].Id;
        var signature = new Signature(DateTimeOffset.UnixEpoch, "Eve");
        (Proposal? proposal, _) = book.Propose(id, [new Families.Finding(new Families.PartId("forward-gear"), Families.Debris.Water, Found: true)], hasFailed: false, signature);
        Assert.True(book.Take(proposal!, signature).IsAccepted);
        Assert.IsType<WrittenMeanwhile>(book.Take(proposal!, signature).Refusal);
    }
}
