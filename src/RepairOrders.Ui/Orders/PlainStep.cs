using Microsoft.AspNetCore.Components;
using RepairOrders.Contract;

namespace RepairOrders.Ui.Orders;

/// <summary>A panel that is its form and no more: what is known, what is offered, where it is sent.</summary>
internal sealed record PlainStep<TAsk>(string Button, Func<RepairOrdersClient, StepContext, TAsk, string, Task> Send)
    : IStepPanel
    where TAsk : class
{
    /// <summary>What the order says already.</summary>
    public Func<StepContext, Task<TAsk?>> Known { get; init; } = _ => Task.FromResult<TAsk?>(null);

    /// <summary>Fields of the known that are left for the person to say: judgements, readings.</summary>
    public string[] Blank { get; init; } = [];

    /// <summary>Choices by field.</summary>
    public IReadOnlyDictionary<string, Offer> Offered { get; init; } = new Dictionary<string, Offer>();

    /// <summary>Fields the order answers itself.</summary>
    public Func<StepContext, string[]> Hidden { get; init; } = _ => [];

    /// <summary>Fields the contract leaves open that this case cannot do without.</summary>
    public Func<StepContext, string[]> Needed { get; init; } = _ => [];

    /// <summary>Fields that few cases need.</summary>
    public string[] Folded { get; init; } = [];

    /// <summary>What a photograph taken here shows.</summary>
    public PhotoOf? Photos { get; init; }

    /// <summary>The kind of record that is being answered, shown above the form.</summary>
    public string? Answers { get; init; }

    /// <summary>What can hurt somebody at this step.</summary>
    public IReadOnlyList<string> Cautions { get; init; } = [];

    /// <summary>The cautions of the design stand here too.</summary>
    public bool DesignCautions { get; init; }

    Type IStepPanel.Type => typeof(PlainPanel<TAsk>);

    IEnumerable<KeyValuePair<string, object>> IStepPanel.Parameters => [new(nameof(PlainPanel<TAsk>.Step), this)];
}

/// <summary>The component that answers an action, and what it is given beside the order.</summary>
public interface IStepPanel
{
    Type Type { get; }

    IEnumerable<KeyValuePair<string, object>> Parameters { get; }
}

/// <summary>A panel with a component of its own.</summary>
internal sealed record OwnPanel<TPanel> : IStepPanel
    where TPanel : IComponent
{
    Type IStepPanel.Type => typeof(TPanel);

    IEnumerable<KeyValuePair<string, object>> IStepPanel.Parameters => [];
}
