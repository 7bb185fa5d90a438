namespace Contam.Families.Reading;

/// <summary>A joint before the parts are made. Two that are equal are one joint written twice.</summary>
/// <param name="From">The place of the part upstream among all parts.</param>
/// <param name="To">The place of the part downstream.</param>
/// <param name="Terms">All else that is said of it; the joints of a circuit's runs share theirs.</param>
internal readonly record struct JointDraft(int From, int To, JointTerms Terms);

/// <summary>When and how a joint is open.</summary>
/// <param name="Circuit">The circuit's name.</param>
/// <param name="When">The engine states in which it is open.</param>
/// <param name="OnlyIfFailed">The place of the part that must have failed, or -1.</param>
/// <param name="Passage">The widest that passes; unlimited where nothing is said, which comes to the same.</param>
internal sealed record JointTerms(string Circuit, EngineStates When, int OnlyIfFailed, ParticleSize Passage);
