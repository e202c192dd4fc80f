namespace RepairOrders.Contract;

/// <summary>A chart with the figures it shows.</summary>
/// <param name="Code">Lower-case words joined by hyphens: <c>thickness-trend</c>.</param>
/// <param name="Title">What it shows.</param>
/// <param name="Columns">Headings of the table, with units.</param>
/// <param name="Rows">The figures.</param>
/// <param name="Svg">The picture.</param>
public sealed record ChartView(
    string Code,
    string Title,
    IReadOnlyList<string> Columns,
    IReadOnlyList<IReadOnlyList<string>> Rows,
    string Svg
);

public sealed partial class RepairOrdersClient
{
    /// <summary>The charts the order has the data for, each with its table.</summary>
    /// <param name="number">The order's number.</param>
    /// <param name="stop">Cancels the read.</param>
    /// <returns>The charts; empty where nothing was read yet.</returns>
    /// <exception cref="Refused">404 when there is no such order that the caller may see.</exception>
    public Task<IReadOnlyList<ChartView>> Charts(string number, CancellationToken stop = default) =>
        Get<IReadOnlyList<ChartView>>($"orders/{number}/charts", stop);

    /// <summary>Drawing and charts of a calculation that needs no order.</summary>
    /// <param name="subject">The subject on the wire: <c>wall-thickness</c>.</param>
    /// <param name="ask">Its ask, such as <see cref="CalculateWallThickness"/>.</param>
    /// <param name="stop">Cancels the call.</param>
    /// <returns>The drawing, where there is one, first; the charts after it.</returns>
    /// <exception cref="Refused">400 with the field, its value and what is allowed.</exception>
    public Task<IReadOnlyList<ChartView>> CalculationCharts(
        string subject,
        object ask,
        CancellationToken stop = default
    ) => Ask<IReadOnlyList<ChartView>>(HttpMethod.Post, $"calculations/{subject}/charts", ask, null, null, stop);

    /// <summary>What a method must be told to size, asked without an order.</summary>
    /// <param name="method">The method's code: <c>laminate-wrap</c>.</param>
    /// <param name="stop">Cancels the read.</param>
    /// <returns>The inputs.</returns>
    /// <exception cref="Refused">404 when there is no such method.</exception>
    public Task<IReadOnlyList<InputView>> CalculationInputs(string method, CancellationToken stop = default) =>
        Get<IReadOnlyList<InputView>>($"calculations/{Escaped(method)}/inputs", stop);
}
