namespace RepairOrders.Engineering.Risk;

/// <summary>Who must watch the test; never a fitter.</summary>
public enum TestWitness
{
    /// <summary>Nobody.</summary>
    None,

    /// <summary>A supervisor.</summary>
    Supervisor,

    /// <summary>A person with the inspector's competence.</summary>
    Inspector,
}

/// <summary>
/// What a risk class asks for. The figures are rules of our own, leaning on NRC Generic Letter 90-05 (weekly look, three-monthly
/// thickness), 6 NYCRR 236.4 (48 h), 49 CFR 192.933 (365 days) and API 570 (half the remaining life).
/// </summary>
/// <param name="Class">The class.</param>
/// <param name="FirstLook">First look after the start in service.</param>
/// <param name="LookInterval">Between looks; for class A a shift of twelve hours.</param>
/// <param name="LookIntervalOnceDry">Between looks once it has stayed dry for <paramref name="DryFor"/>.</param>
/// <param name="DryFor">How long it must have stayed dry for the longer interval.</param>
/// <param name="ThicknessInterval">Between thickness visits.</param>
/// <param name="Grace">After a look is due, before it is overdue.</param>
/// <param name="Cap">Longest first approval.</param>
/// <param name="Extensions">How many extensions may be given.</param>
/// <param name="ExtensionLength">How long one may be.</param>
/// <param name="EmergencyClock">From the start in service until assessment, design and full approval are owed.</param>
/// <param name="FullReview">Age at which a full engineering review is due; nothing where each extension is one.</param>
/// <param name="Witness">Who watches the test.</param>
public sealed record ClassDuties(
    RiskClass Class,
    TimeSpan FirstLook,
    TimeSpan LookInterval,
    TimeSpan LookIntervalOnceDry,
    TimeSpan DryFor,
    TimeSpan ThicknessInterval,
    TimeSpan Grace,
    TimeSpan Cap,
    int Extensions,
    TimeSpan ExtensionLength,
    TimeSpan EmergencyClock,
    TimeSpan? FullReview,
    TestWitness Witness
)
{
    /// <summary>The duties of all classes, worst first.</summary>
    public static IReadOnlyList<ClassDuties> All { get; } =
    [
        new(
            RiskClass.A,
            FirstLook: Hours(24),
            LookInterval: Hours(12),
            LookIntervalOnceDry: Days(7),
            DryFor: Days(14),
            ThicknessInterval: Days(30),
            Grace: TimeSpan.Zero,
            Cap: Days(90),
            Extensions: 1,
            ExtensionLength: Days(30),
            EmergencyClock: Hours(24),
            FullReview: null,
            TestWitness.Inspector
        ),
        new(
            RiskClass.B,
            FirstLook: Hours(48),
            LookInterval: Days(7),
            LookIntervalOnceDry: Days(7),
            DryFor: TimeSpan.Zero,
            ThicknessInterval: Days(90),
            Grace: Days(1),
            Cap: Days(180),
            Extensions: 2,
            ExtensionLength: Days(90),
            EmergencyClock: Hours(24),
            FullReview: null,
            TestWitness.Inspector
        ),
        new(
            RiskClass.C,
            FirstLook: Days(7),
            LookInterval: Days(30),
            LookIntervalOnceDry: Days(30),
            DryFor: TimeSpan.Zero,
            ThicknessInterval: Days(180),
            Grace: Days(3),
            Cap: Days(365),
            Extensions: 2,
            ExtensionLength: Days(180),
            EmergencyClock: Hours(72),
            FullReview: Days(365),
            TestWitness.Supervisor
        ),
        new(
            RiskClass.D,
            FirstLook: Days(30),
            LookInterval: Days(90),
            LookIntervalOnceDry: Days(90),
            DryFor: TimeSpan.Zero,
            ThicknessInterval: Days(365),
            Grace: Days(7),
            Cap: Days(730),
            Extensions: 2,
            ExtensionLength: Days(365),
            EmergencyClock: Days(7),
            FullReview: Days(730),
            TestWitness.None
        ),
    ];

    /// <summary>The duties of a class.</summary>
    /// <param name="riskClass">The class.</param>
    /// <returns>Its duties.</returns>
    public static ClassDuties Of(RiskClass riskClass) => All.First(d => d.Class == riskClass);

    private static TimeSpan Days(int days) => TimeSpan.FromDays(days);

    private static TimeSpan Hours(int hours) => TimeSpan.FromHours(hours);
}

/// <summary>Risk carried by several live repairs on one isolatable section, or by a whole site.</summary>
public static class CarriedRisk
{
    /// <summary>Weight of a class: A 27, B 9, C 3, D 1; three of a class weigh as one of the next. A rule of our own.</summary>
    /// <param name="riskClass">The class.</param>
    /// <returns>The weight, without unit.</returns>
    public static int Weight(RiskClass riskClass) =>
        riskClass switch
        {
            RiskClass.A => 27,
            RiskClass.B => 9,
            RiskClass.C => 3,
            RiskClass.D => 1,
            _ => throw new ImpossibleInputException("riskClass", riskClass.ToString(), "A, B, C or D"),
        };

    /// <summary>The sum of the weights.</summary>
    /// <param name="classes">Class today of each live repair.</param>
    /// <returns>The sum, without unit; 0 for none.</returns>
    public static int Sum(IEnumerable<RiskClass> classes) => classes.Sum(Weight);
}
