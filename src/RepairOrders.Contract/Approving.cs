using System.ComponentModel.DataAnnotations;

namespace RepairOrders.Contract;

/// <summary>Signs the design for one of the places its class asks for.</summary>
/// <param name="Fingerprint">The fingerprint of the design that was on the screen: that is what is signed.</param>
/// <param name="As">The capacity signed in; one person signs in one capacity.</param>
/// <param name="Remark">What the signer wants on record.</param>
public sealed record ApproveOrder(
    [property: Required, StringLength(64, MinimumLength = 64)] string Fingerprint,
    ApprovalCapacity As,
    [property: StringLength(2000)] string? Remark = null
);

/// <summary>In which capacity an approval is signed.</summary>
public enum ApprovalCapacity
{
    /// <summary>As supervisor.</summary>
    Supervisor,

    /// <summary>As engineer; on classes A and B one who neither assessed nor sized.</summary>
    Engineer,

    /// <summary>As manager.</summary>
    Manager,
}

public sealed partial class RepairOrdersClient
{
    /// <summary>Signs the design.</summary>
    /// <param name="number">The order's number.</param>
    /// <param name="ask">Fingerprint and capacity.</param>
    /// <returns>The approval as recorded.</returns>
    /// <exception cref="Refused">409 with the objection.</exception>
    public Task<RecordView> Approve(string number, ApproveOrder ask) =>
        Post<RecordView>($"orders/{number}/approvals", ask);

    /// <summary>Withdraws one's approval before work begins.</summary>
    /// <param name="number">The order's number.</param>
    /// <param name="approval">The approval.</param>
    /// <param name="why">The reason.</param>
    /// <param name="version">The version seen.</param>
    /// <returns>When it is set aside.</returns>
    /// <exception cref="Refused">409 with the objection, 412 when the order changed since.</exception>
    public Task WithdrawApproval(string number, Guid approval, string why, string version) =>
        Delete<Nothing>($"orders/{number}/approvals/{approval}", why, version);
}
