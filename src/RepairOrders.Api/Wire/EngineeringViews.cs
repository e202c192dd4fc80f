using RepairOrders.Contract;
using RepairOrders.Engineering;
using RepairOrders.Engineering.Methods;
using RepairOrders.Engineering.Risk;

namespace RepairOrders.Api.Wire;

/// <summary>The engine's answers as the wire tells them.</summary>
internal static class EngineeringViews
{
    public static FindingView View(this Finding f) =>
        new(
            f.Code,
            f.Severity.As<FindingSeverity>(),
            f.Words,
            Finite(f.Value),
            Finite(f.Limit),
            f.Unit,
            f.Source.ToString(),
            f.Kind == LimitKind.Absolute
        );

    public static WorkingStepView View(this WorkingStep s) =>
        new(s.Symbol, s.Words, s.Formula, s.Substituted, Finite(s.Value) ?? 0, s.Unit, s.Clause.ToString());

    public static CalculationView View<T>(this Calculated<T> calculated, string code, string words) =>
        new(
            code,
            words,
            [.. calculated.Working.Select(View)],
            [.. calculated.Findings.Select(View)],
            calculated.Cautions
        );

    public static InputView View(this Input i) =>
        new(i.Code, i.Symbol, i.Words, i.Unit, i.Minimum, i.Maximum, i.Default, i.Source.ToString(), i.Choices);

    public static HoldPointView View(this HoldPoint h) =>
        new(
            h.Code,
            h.Title,
            h.Kind.As<Contract.HoldKind>(),
            h.ReleasedBy,
            [.. h.Evidence.Select(e => e.As<Contract.Evidence>())],
            h.After,
            h.Source.ToString()
        );

    public static MethodDesignView View(this MethodDesign d, string name) =>
        new(
            d.Method,
            name,
            Entered: false,
            null,
            [.. d.Dimensions.Select(x => new DimensionView(x.Code, x.Words, x.Value, x.Unit))],
            d.PressureHeldBar,
            [.. d.Materials.Select(m => new MaterialNeedView(m.Code, m.Words, m.Quantity, m.Unit, m.Part))],
            [.. d.HoldPoints.Select(View)],
            d.Cautions,
            [.. d.Working.Select(View)],
            [.. d.Findings.Select(View)],
            d.SetForLoadHours,
            d.FullHardnessHours,
            d.CureReferenceC,
            d.DesignLifeDays,
            d.LeastWallMm,
            d.CarriesAxialLoad,
            [
                .. d.Series.Select(s => new SeriesView(
                    s.Code,
                    s.Words,
                    s.Across,
                    s.Up,
                    [.. s.Points.Select(p => new PointView(p.X, p.Y))]
                )),
            ]
        );

    public static RiskView View(this RiskRank rank) =>
        new(rank.Class.As<Contract.RiskClass>(), rank.Consequence, rank.Likelihood, rank.Reasons);

    /// <summary>The same word in another enumeration: Contract repeats the engine's, so that the screens need not see it.</summary>
    public static T As<T>(this Enum word)
        where T : struct, Enum => Enum.Parse<T>(word.ToString());

    // JSON has no word for infinity; a limit that is none is left out.
    private static double? Finite(double? value) => value is { } v && double.IsFinite(v) ? v : null;
}
