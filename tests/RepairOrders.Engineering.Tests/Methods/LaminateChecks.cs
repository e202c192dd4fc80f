using MathNet.Numerics.Integration;
using RepairOrders.Engineering.Methods.LaminateWrap;
using UnitsNet;

namespace RepairOrders.Engineering.Tests.Methods;

/// <summary>Published, recalled and derived rows on laminates; each row of the table names its source.</summary>
public class LaminateChecks
{
    private static PublishedCheck Row(string id) => PublishedTable.Check("method-checks.csv", id);

    private static Length Mm(double value) => Length.FromMillimeters(value);

    private static Pressure Mpa(double value) => Pressure.FromMegapascals(value);

    [Fact]
    public void The_printed_imperial_limit_is_three_per_cent_above_the_metric_one()
    {
        var row = Row("CMP01");
        var product = LaminateOverlap.RiskProduct(
            Pressure.FromPoundsForcePerSquareInch(row.Number("x")),
            Length.FromInches(1)
        );
        row.ShouldBeMetBy(product);
        product.ShouldBe(0.1648, 5e-5);
    }

    [Fact]
    public void Risk_product()
    {
        var row = Row("CMP02");
        row.ShouldBeMetBy(LaminateOverlap.RiskProduct(Mpa(row.Number("P")), Length.FromMeters(row.Number("d"))));
    }

    [Theory]
    [InlineData("CMP03")]
    [InlineData("CMP04")]
    public void Hoop_by_strain(string id)
    {
        var row = Row(id);
        row.ShouldBeMetBy(
            LaminateThickness
                .StrainHoop(
                    Mpa(row.Number("P")),
                    Mm(row.Number("D")),
                    Mpa(row.Number("s", 0)),
                    Mm(row.Number("ts", 0)),
                    row.Number("eps"),
                    Mpa(row.Number("Ec"))
                )
                .Millimeters
        );
    }

    [Fact]
    public void Hoop_with_the_pipe_elastic()
    {
        var row = Row("CMP05");
        row.ShouldBeMetBy(
            LaminateThickness
                .ElasticHoop(
                    Mm(row.Number("D")),
                    Mpa(row.Number("s")),
                    Mpa(row.Number("Es")),
                    Mpa(row.Number("Ec")),
                    Mpa(row.Number("P")),
                    Mpa(row.Number("Ps"))
                )
                .Millimeters
        );
    }

    [Fact]
    public void Axial_with_the_pipe_elastic()
    {
        var row = Row("CMP06");
        row.ShouldBeMetBy(
            LaminateThickness
                .ElasticAxial(
                    Mm(row.Number("D")),
                    Mpa(row.Number("s")),
                    Mpa(row.Number("Es")),
                    Mpa(row.Number("Ea")),
                    Force.FromNewtons(row.Number("F")),
                    Mpa(row.Number("Ps"))
                )
                .Millimeters
        );
    }

    [Fact]
    public void Pressure_over_a_round_hole_and_a_slot()
    {
        var hole = Row("CMP07");
        hole.ShouldBeMetBy(
            LaminateOverHole.RoundHole(Mm(hole.Number("d")), Mm(hole.Number("t")), Bond(hole)).Megapascals
        );
        var slot = Row("CMP21");
        slot.ShouldBeMetBy(LaminateOverHole.Slot(Mm(slot.Number("W")), Mm(slot.Number("t")), Bond(slot)).Megapascals);
    }

    [Fact]
    public void Thickness_over_a_round_hole_gives_the_pressure_back()
    {
        var row = Row("CMP15");
        var t = LaminateOverHole.ForRoundHole(Mpa(row.Number("P")), Mm(row.Number("d")), Bond(row))!.Value;
        row.ShouldBeMetBy(t.Millimeters);
        LaminateOverHole.RoundHole(Mm(row.Number("d")), t, Bond(row)).Megapascals.ShouldBe(row.Number("P"), 1e-9);
    }

    [Fact]
    public void No_thickness_holds_more_than_the_bond_does()
    {
        var row = Row("CMP07");
        var (E, nu, d) = (row.Number("E"), row.Number("nu"), row.Number("d"));
        var most = row.Number("f") * Math.Sqrt(row.Number("gamma") * Math.PI * E / ((1 - nu * nu) * d));
        LaminateOverHole.ForRoundHole(Mpa(most * 0.99), Mm(d), Bond(row)).ShouldNotBeNull();
        LaminateOverHole.ForRoundHole(Mpa(most * 1.001), Mm(d), Bond(row)).ShouldBeNull();
    }

    [Fact]
    public void Energy_released_by_a_disc_and_a_strip()
    {
        var disc = Row("CMP08");
        disc.ShouldBeMetBy(
            LaminateOverHole
                .DiscRelease(
                    Mpa(disc.Number("p")),
                    Mm(disc.Number("d")),
                    Mm(disc.Number("t")),
                    Mpa(disc.Number("E")),
                    disc.Number("nu")
                )
                .NewtonsPerMillimeter
        );
        var strip = Row("CMP09");
        strip.ShouldBeMetBy(
            LaminateOverHole
                .StripRelease(
                    Mpa(strip.Number("p")),
                    Mm(strip.Number("W")),
                    Mm(strip.Number("t")),
                    Mpa(strip.Number("E")),
                    strip.Number("nu")
                )
                .NewtonsPerMillimeter
        );
    }

    // The clamped plates' deflections integrated by quadrature, and the energy differentiated: no closed form is used.
    [Fact]
    public void Energy_released_agrees_with_the_plates_themselves()
    {
        var (p, t, E, nu) = (2.0, 8.0, 20_000.0, 0.3);
        var stiffness = E * t * t * t / (12 * (1 - nu * nu));
        double Disc(double a) => p * GaussLegendreRule.Integrate(r => DiscAt(a, r) * 2 * Math.PI * r, 0, a, 32) / 2;
        double DiscAt(double a, double r) => p * Math.Pow(a * a - r * r, 2) / (64 * stiffness);
        double Strip(double a) => p * GaussLegendreRule.Integrate(x => StripAt(a, x), -a, a, 32) / 2;
        double StripAt(double a, double x) => p * Math.Pow(a * a - x * x, 2) / (24 * stiffness);
        const double h = 1e-3;

        var disc = (Disc(25 + h) - Disc(25 - h)) / (2 * h) / (2 * Math.PI * 25);
        var strip = (Strip(25 + h) - Strip(25 - h)) / (2 * h) / 2;

        LaminateOverHole
            .DiscRelease(Mpa(p), Mm(50), Mm(t), Mpa(E), nu)
            .NewtonsPerMillimeter.ShouldBe(disc, disc * 1e-6);
        LaminateOverHole
            .StripRelease(Mpa(p), Mm(50), Mm(t), Mpa(E), nu)
            .NewtonsPerMillimeter.ShouldBe(strip, strip * 1e-6);
    }

    [Fact]
    public void Overlaps_and_length()
    {
        var iso = Row("CMP10");
        iso.ShouldBeMetBy(LaminateOverlap.Iso(Mm(iso.Number("D")), Mm(iso.Number("t"))).Millimeters);
        var asme = Row("CMP11");
        asme.ShouldBeMetBy(LaminateOverlap.Asme(Mm(asme.Number("D")), Mm(asme.Number("t"))).Millimeters);
        var total = Row("CMP12");
        total.ShouldBeMetBy(
            LaminateOverlap
                .Total(Mm(total.Number("defect")), Mm(total.Number("over")), Mm(total.Number("taper")))
                .Millimeters
        );
        var shear = Row("CMP26");
        shear.Number("factor").ShouldBe(3);
        shear.ShouldBeMetBy(
            LaminateOverlap
                .BondShear(
                    Mpa(shear.Number("Ea")),
                    shear.Number("eps_a"),
                    Mm(shear.Number("t")),
                    Mpa(shear.Number("tau"))
                )
                .Millimeters
        );
    }

    [Fact]
    public void Allowable_strain()
    {
        var row = Row("CMP13");
        row.ShouldBeMetBy(
            LaminateDerating.AllowableStrain(
                row.Number("ft"),
                row.Number("eps0"),
                TemperatureDelta.FromKelvins(row.Number("dT")),
                row.Number("a_s"),
                row.Number("a_c")
            )
        );
    }

    [Fact]
    public void Least_number_of_plies()
    {
        var row = Row("CMP14");
        row.ShouldBeMetBy(LaminateThickness.Plies(Mm(row.Number("t")), Mm(row.Number("t_ply"))));
    }

    // From memory of ISO 24817; not checked against the print.
    [Fact]
    public void Life_factor_from_memory()
    {
        foreach (var id in (string[])["CMP22", "CMP23"])
            Row(id).ShouldBeMetBy(LaminateDerating.LifeFactor(Row(id).Number("years")));
        LaminateDerating.LifeFactor(0.5).ShouldBe(0.666);
        Should.Throw<ImpossibleInputException>(() => LaminateDerating.LifeFactor(21));
    }

    // From memory of ISO 24817; not checked against the print.
    [Fact]
    public void Temperature_factor_from_memory()
    {
        foreach (var id in (string[])["CMP24", "CMP25"])
            Row(id).ShouldBeMetBy(Factor(Row(id).Number("Tm"), Row(id).Number("Td"))!.Value);
        Factor(80, 130).ShouldBeNull("above the limit the parabola would turn up to 0.80");

        static double? Factor(double Tm, double Td) =>
            LaminateDerating.TemperatureFactor(Temperature.FromDegreesCelsius(Tm), Temperature.FromDegreesCelsius(Td));
    }

    // From memory of ISO 24817: 0.50 at 7000 full cycles, 0.25 at 10⁸.
    [Fact]
    public void Cyclic_factor_from_memory()
    {
        LaminateDerating.CyclicFactor(6999, 0).ShouldBe(1);
        LaminateDerating.CyclicFactor(7000, 0).ShouldBe(0.50, 0.005);
        LaminateDerating.CyclicFactor(1e8, 0).ShouldBe(0.25, 0.005);
        LaminateDerating.CyclicFactor(7000, 1).ShouldBe(1);
    }

    [Fact]
    public void Hand_lay_up_by_the_manual()
    {
        var resin = Row2("BND21");
        resin.ShouldBeMetBy(HandLayUp.Resin(Area.FromSquareInches(resin.Number("area_in2"))).Grams);
        var cloth = Row2("BND22");
        cloth.ShouldBeMetBy(HandLayUp.Cloth(Length.FromInches(cloth.Number("circ_in"))).Inches);
        foreach (var row in (PublishedCheck[])[Row2("BND23"), Row2("BND24")])
            row.ShouldBeMetBy(HandLayUp.Ratio(Mass.FromGrams(row.Number("a")), Mass.FromGrams(row.Number("b"))));

        static PublishedCheck Row2(string id) => PublishedTable.Check("joint-checks.csv", id);
    }

    private static LaminateBond Bond(PublishedCheck row) =>
        new(
            Mpa(row.Number("E")),
            Mpa(row.Number("G")),
            row.Number("nu"),
            ForcePerLength.FromNewtonsPerMillimeter(row.Number("gamma")),
            row.Number("f")
        );
}
