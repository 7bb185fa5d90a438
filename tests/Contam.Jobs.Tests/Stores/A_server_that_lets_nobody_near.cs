using System.Text;
using Contam.Cli.Jobs;
using Contam.Cli;
using Contam.Hosting;
using Contam.Jobs.Stores;
using Contam.Reports.Text;
using Microsoft.Extensions.DependencyInjection;

namespace Contam.Jobs.Tests.Stores;

/// <summary>A server that refuses a secured transport, that shows a stranger's certificate, or that says nothing at all: a person is told what it is, and at once.</summary>
public class A_server_that_lets_nobody_near
{
    [Fact]
    public void Without_a_secured_transport_is_said_so_and_no_password_is_asked_for()
    {
        using var server = FakeServer.WithoutTransport();
        IsOfTransport(server, server.Address("?sslmode=require"));
    }

    [Theory]
    [InlineData("?sslmode=verify-full")]
    [InlineData("?sslmode=verify-ca")]
    public void With_a_certificate_that_nobody_stands_for_is_said_so_and_no_password_is_asked_for(string query)
    {
        using var server = FakeServer.WithItsOwnCertificate();
        IsOfTransport(server, server.Address(query));
    }

    [Fact]
    public void That_says_nothing_is_told_while_it_is_waited_for()
    {
        var told = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);
        var clock = new HandClock();
        using var server = FakeServer.Silent(clock.Ring, told.Task);
        using var answers = new StringWriter { NewLine = "\n" };
        using var rest = new Told(told);
        string address = server.Address().Replace("ada@", "ada:s3cret@", StringComparison.Ordinal);
        int exit = ContamCommand.Run(["job", "list", "--shop", address], new Shell(answers, rest, TextLook.Plain) { Clock = clock });
        server.Finish();
        Assert.Equal((2, ""), (exit, answers.ToString()));
        Assert.StartsWith($"contam: waiting for {server.Address().Replace("ada@", "ada:***@", StringComparison.Ordinal)} …\ncontam: ", rest.ToString(), StringComparison.Ordinal);
        Assert.InRange(clock.Due, TimeSpan.Zero, TimeSpan.FromSeconds(2));
    }

    [Fact]
    public void That_answers_before_the_wait_is_long_is_not_waited_for_aloud()
    {
        using var rest = new StringWriter { NewLine = "\n" };
        using ServiceProvider services = new ServiceCollection().AddContam().BuildServiceProvider();
        Assert.Throws<ShopException>(() => new OpenShops(new Shell(TextWriter.Null, rest, TextLook.Plain) { Clock = new HandClock() }, services.GetRequiredService<IJobBooks>()).Open("postgres://ada@127.0.0.1:1/shop", ShopUse.Read));
        Assert.Equal("", rest.ToString());
    }

    private static void IsOfTransport(FakeServer server, string address)
    {
        ShopException said = Assert.Throws<ShopException>(() => Shops.Open(address, mayCreate: true).Dispose());
        Assert.Equal(ShopFault.Server, said.Fault);
        Assert.StartsWith($"the transport to {server.Address()} cannot be agreed on: ", said.Message, StringComparison.Ordinal);
        Assert.DoesNotContain("PGPASSWORD", said.Message, StringComparison.Ordinal);
        server.Finish();
        Assert.True(server.WasAskedForTransportAlone, "it was sent something else than the wish for a secured transport");
    }

    /// <summary>A clock whose timers go off when somebody rings.</summary>
    private sealed class HandClock : TimeProvider
    {
        private readonly Lock turn = new();
        private Action? callback;
        private bool hasRung;

        public TimeSpan Due { get; private set; }

        public override ITimer CreateTimer(TimerCallback callback, object? state, TimeSpan dueTime, TimeSpan period)
        {
            lock (turn)
            {
                Due = dueTime;
                this.callback = () => callback(state);
                if (hasRung)
                    this.callback();
            }

            return new Stopped();
        }

        public void Ring()
        {
            lock (turn)
            {
                hasRung = true;
                callback?.Invoke();
            }
        }

        private sealed class Stopped : ITimer
        {
            public bool Change(TimeSpan dueTime, TimeSpan period) => true;

            public void Dispose()
            {
            }

            public ValueTask DisposeAsync() => ValueTask.CompletedTask;
        }
    }

    /// <summary>Messages, and somebody who hears when the first is there.</summary>
    private sealed class Told(TaskCompletionSource told) : TextWriter
    {
        private readonly StringBuilder text = new();

        public override Encoding Encoding => Encoding.UTF8;

        public override void Write(char value)
        {
            lock (text)
                text.Append(value);
        }

        public override void Write(string? value)
        {
            lock (text)
                text.Append(value);
            told.TrySetResult();
        }

        public override string ToString()
        {
            lock (text)
                return text.ToString();
        }
    }
}
