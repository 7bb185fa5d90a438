/// <summary>
/// Run by the runtime in a process of the command that a test starts, before the command itself: writes down at the end which assemblies were loaded.
/// The runtime looks for this name, in no namespace.
/// </summary>
internal static class StartupHook
{
    public static void Initialize() => AppDomain.CurrentDomain.ProcessExit += (_, _) =>
        File.WriteAllLines(Environment.GetEnvironmentVariable("CONTAM_LOADED")!, AppDomain.CurrentDomain.GetAssemblies().Select(one => one.GetName().Name!));
}
