using System.Globalization;
using RepairOrders.Api.Orders;
using RepairOrders.Contract;

namespace RepairOrders.Api.Fitting;

/// <summary>Whether every fastener was tightened in passes and ends inside the window of the design.</summary>
internal static class Tightening
{
    public static Objection? Objection(WorkPlan plan, IReadOnlyList<Tightened> passes)
    {
        if (passes.Count == 0 || passes.Any(p => p.Torque is null == p.Tension is null))
            return new Objection(
                "tightening-missing",
                "Give each fastener and pass with the torque reached, or with the tension where it was measured.",
                "technician"
            );
        var last = passes.GroupBy(p => p.Fastener).Select(g => g.MaxBy(p => p.Pass)!).ToList();
        if (
            plan.Fasteners is { } count
            && Enumerable.Range(1, count).FirstOrDefault(n => last.All(p => p.Fastener != n)) is var open and > 0
        )
            return new Objection(
                "fastener-missing",
                $"Fastener {open} of {count} has no reading.",
                "technician, by tightening it in turn"
            );
        return passes.FirstOrDefault(p => TooMuch(plan, p)) is { } over ? Outside(plan, over)
            : last.FirstOrDefault(p => TooLittle(plan, p)) is { } under ? Outside(plan, under)
            : null;
    }

    private static Objection Outside(WorkPlan plan, Tightened pass)
    {
        var (least, most) = Window(plan, pass);
        return new Objection(
            "tightening-outside",
            string.Create(
                CultureInfo.InvariantCulture,
                $"Fastener {pass.Fastener}, pass {pass.Pass}: {(pass.Torque ?? pass.Tension)!.Entered}; the design allows {least:0.#} to {most:0.#} {(pass.Torque ?? pass.Tension)!.Unit}. Slacken and tighten again; never pull a gap shut by force."
            ),
            "technician, by tightening again; integrity engineer if it cannot be reached"
        );
    }

    private static bool TooMuch(WorkPlan plan, Tightened pass) => Value(pass) > Window(plan, pass).Most;

    private static bool TooLittle(WorkPlan plan, Tightened pass) => Value(pass) < Window(plan, pass).Least;

    private static double Value(Tightened pass) => (pass.Torque ?? pass.Tension)!.Value;

    private static (double? Least, double? Most) Window(WorkPlan plan, Tightened pass) =>
        pass.Torque is not null
            ? (plan.Design["torqueLeastNm"], plan.Design["torqueMostNm"])
            : (plan.Design["bandTensionLowN"], plan.Design["bandTensionHighN"]);
}
