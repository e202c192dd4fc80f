using RepairOrders.Api.Store;

namespace RepairOrders.Api.Lines;

/// <summary>A piping line of the line list. Lengths mm, pressures bar gauge, temperatures °C.</summary>
internal sealed class Line : IKept
{
    public Guid Id { get; init; } = Guid.CreateVersion7();
    public Guid SiteId { get; init; }
    public string Number { get; init; } = "";
    public string Area { get; set; } = "";
    public string Section { get; set; } = "";
    public string Nps { get; set; } = "";
    public int? Dn { get; set; }
    public double OutsideDiameterMm { get; set; }
    public double NominalWallMm { get; set; }
    public string Grade { get; set; } = "";
    public string Fluid { get; set; } = "";

    /// <summary>liquid, flashingLiquid, gas or steam.</summary>
    public string FluidState { get; set; } = "liquid";
    public int FluidGroup { get; set; } = 2;

    /// <summary>d, normal, m or highPressure.</summary>
    public string ServiceCategory { get; set; } = "normal";
    public int InspectionClass { get; set; } = 4;
    public bool Flammable { get; set; }
    public bool Toxic { get; set; }
    public double? AutoIgnitionC { get; set; }
    public double DesignPressureBar { get; set; }
    public double DesignTemperatureC { get; set; }
    public double OperatingPressureBar { get; set; }
    public double OperatingTemperatureC { get; set; }
    public bool Lagged { get; set; }
    public bool Potable { get; set; }
    public bool SafetyCritical { get; set; }
    public int? YearInstalled { get; set; }

    /// <summary>Out of the list: no new order names it, its old ones keep it.</summary>
    public bool Retired { get; set; }

    public string Kind => "line";
    public int Revision { get; set; }
    public string ChangesHash { get; set; } = "";
}
