using Contam.Audits;
using static Contam.Tests.Audits.Audited;

namespace Contam.Tests.Audits;

/// <summary>Against an earlier audit only what has changed is told.</summary>
public sealed class An_audit_and_an_earlier_one
{
    [Fact]
    public void Of_the_same_says_nothing()
    {
        Audit audit = Of(Winch());
        AuditChange change = AuditChange.Between(audit.Messages, audit.Failures, Of(Winch()));
        Assert.Equal((0, 0, 0, 0), (change.New.Length, change.Gone.Length, change.Failures.Length, change.Errors));
    }

    [Fact]
    public void Shows_the_new_and_the_gone_and_the_changed_plans()
    {
        Audit before = Of(Winch("return-hose: {kind: hose}", "- [return-hose, sump]"));
        Audit after = Of(Winch("return-hose: {kind: hose}\n  drain: {kind: pipe}", "- [motor, return-hose, sump]\n      - [drain, sump]"));
        AuditChange change = AuditChange.Between(before.Messages, before.Failures, after);
        Assert.Equal(["no-way-in drain", "reaches-most pump metal"], change.New.Select(message => $"{message.Code} {message.About}"));
        Assert.Equal(["no-way-in return-hose"], change.Gone.Select(message => $"{message.Code} {message.About}"));
        ChangedFailure failure = Assert.Single(change.Failures);
        Assert.Equal((4, 5), (failure.Before!.Reached, failure.Now!.Reached));
        Assert.Equal(1, change.Errors);
    }

    [Fact]
    public void Shows_a_treatment_that_changed_though_the_hours_did_not()
    {
        const string shop = "format: 1\nstandard: shop\ntimes: {hose: {clean: 10, flush: 10}}\nrules: [{for: {kind: hose}, exposed: [METHOD], guarded: [inspect], because: a trial}]";
        Audit before = Of(shop.Replace("METHOD", "clean", StringComparison.Ordinal), [Winch()]);
        Audit after = Of(shop.Replace("METHOD", "flush", StringComparison.Ordinal), [Winch()]);
        ChangedFailure failure = Assert.Single(AuditChange.Between(before.Messages, before.Failures, after).Failures);
        Assert.Equal(failure.Before!.BenchHours, failure.Now!.BenchHours);
        Assert.NotEqual(failure.Before.Treatments, failure.Now.Treatments);
    }

    [Fact]
    public void Shows_failures_that_came_and_went()
    {
        Audit before = Of(Winch());
        Audit after = Of(Winch(line: "line: {kind: hose, sheds: {rubber: rare}, inspect: {minutes: 5, shows: good}}"));
        Assert.Equal("line", Assert.Single(AuditChange.Between(before.Messages, before.Failures, after).Failures, one => one.Before is null).Now!.Part);
        Assert.Equal("line", Assert.Single(AuditChange.Between(after.Messages, after.Failures, before).Failures, one => one.Now is null).Before!.Part);
    }
}
