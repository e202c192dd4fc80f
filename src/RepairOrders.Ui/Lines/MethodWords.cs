using RepairOrders.Contract;

namespace RepairOrders.Ui.Lines;

/// <summary>The repair methods as their codes are spelt and as people say them.</summary>
internal static class MethodWords
{
    /// <summary>Codes and words of all methods. A competence to fit is named after its method, and two are no methods.</summary>
    public static IReadOnlyList<KeyValuePair<string, string>> All { get; } =
    [
        .. Competences
            .All.Where(c => c is not (Competences.Inspector or Competences.OperationsInCharge))
            .Select(c => KeyValuePair.Create(c, Of(c))),
    ];

    /// <summary><c>banded-patch</c> is "banded patch".</summary>
    public static string Of(string code) => code.Replace('-', ' ');
}
