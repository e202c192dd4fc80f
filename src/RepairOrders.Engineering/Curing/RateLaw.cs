using System.Globalization;
using RepairOrders.Engineering.Methods;
using UnitsNet;

namespace RepairOrders.Engineering.Curing;

/// <summary>The law by which a material's times change with temperature.</summary>
public abstract record RateLaw
{
    private protected RateLaw() { }

    /// <summary>Where the law comes from.</summary>
    public abstract Clause Source { get; }

    /// <summary>The law in symbols, for the working.</summary>
    public abstract string Symbols { get; }

    /// <summary>Rate at a temperature against the rate at the reference.</summary>
    /// <param name="at">Temperature, °C.</param>
    /// <param name="reference">Temperature the times are stated at, °C.</param>
    /// <returns>Rate factor, -.</returns>
    /// <exception cref="ImpossibleInputException">A temperature or a constant out of range.</exception>
    public abstract double Factor(Temperature at, Temperature reference);

    // The formula with the numbers of one temperature put in.
    internal abstract FormattableString Numbers(double T, double Tref);
}

/// <summary>The ten-degree rule, with one ratio below the reference and one above.</summary>
/// <param name="Below">Q10 below the reference, -.</param>
/// <param name="Above">Q10 above the reference, -.</param>
public sealed record Q10Law(double Below, double Above) : RateLaw
{
    // Published epoxy-amine activation energies span Q10 1.8 to 2.6. Cure must not be over-credited, pot life not over-stated:
    // the same spread gives opposite pairs.

    /// <summary>For cure without product data: 2.6 below the reference, 1.8 above, so that no cure is credited that may not be there.</summary>
    public static readonly Q10Law SafeForCure = new(2.6, 1.8);

    /// <summary>For pot life without product data: 1.8 below the reference, 2.6 above, so that it is not counted longer than it may be.</summary>
    public static readonly Q10Law SafeForPotLife = new(1.8, 2.6);

    /// <inheritdoc/>
    public override Clause Source =>
        this == SafeForCure || this == SafeForPotLife
            ? Clause.Default("spread of published epoxy-amine activation energies, 44 to 71 kJ/mol")
            : new("the material's data", "", Provenance.Entered);

    /// <inheritdoc/>
    public override string Symbols =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"Q10^((T − Tref)/10), Q10 = {Below:G3} below Tref, {Above:G3} above"
        );

    /// <inheritdoc/>
    public override double Factor(Temperature at, Temperature reference) =>
        CureRate.ByQ10(at, reference, at < reference ? Below : Above);

    internal override FormattableString Numbers(double T, double Tref) =>
        $"{(T < Tref ? Below : Above)}^(({T} − {Tref})/10)";
}

/// <summary>The law of Arrhenius with the material's own activation energy.</summary>
/// <param name="ActivationEnergy">Activation energy, kJ/mol.</param>
public sealed record ArrheniusLaw(MolarEnergy ActivationEnergy) : RateLaw
{
    /// <inheritdoc/>
    public override Clause Source => new("the material's data", "activation energy", Provenance.Entered);

    internal override FormattableString Numbers(double T, double Tref) =>
        $"exp({ActivationEnergy.JoulesPerMole}/8.3145 × (1/{Tref + 273.15:G7} − 1/{T + 273.15:G7}))";

    /// <inheritdoc/>
    public override string Symbols =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"exp(Ea/R·(1/Tref − 1/T)), Ea = {ActivationEnergy.KilojoulesPerMole:G4} kJ/mol, T in K"
        );

    /// <inheritdoc/>
    public override double Factor(Temperature at, Temperature reference) =>
        CureRate.ByArrhenius(at, reference, ActivationEnergy);
}
