using Microsoft.AspNetCore.Components;
using RepairOrders.Contract;
using RepairOrders.Ui.Session;

namespace RepairOrders.Ui.Parts;

/// <summary>A page that reads something: who asks, whether it has come, and what went wrong stand in one place.</summary>
public abstract class ReadingPage : ComponentBase
{
    [Inject]
    private protected ApiConnection Api { get; set; } = null!;

    [Inject]
    private protected NavigationManager Navigation { get; set; } = null!;

    [Inject]
    private protected TimeProvider Clock { get; set; } = null!;

    /// <summary>The zone of whoever reads; nothing before the browser has said it.</summary>
    [CascadingParameter]
    public TimeZoneInfo? Zone { get; set; }

    /// <summary>The person signed in; nothing before the first answer.</summary>
    public MeView? Me { get; private set; }

    /// <summary>What day it is where it is read.</summary>
    protected DateOnly Today => Clock.Today(Zone);

    /// <summary>What went wrong with the last read.</summary>
    public Exception? Trouble { get; private set; }

    /// <summary>There is something to show.</summary>
    public bool Ready { get; private set; }

    /// <summary>Whether the person's roles allow it at all.</summary>
    public bool May(string permission) => Me?.Permissions.Contains(permission) == true;

    /// <summary>The site to show: as the address says, or the person's first.</summary>
    protected string SiteOr(string? asked) =>
        Me is { } me && asked is { } site && me.Sites.Contains(site) ? site
        : Me?.Sites is [var first, ..] ? first
        : "";

    private TimeZoneInfo? told;
    private bool asked;

    protected override Task OnParametersSetAsync()
    {
        // The browser saying its zone is no reason to read again, unless it is another day there.
        var onlyZone = asked && told != Zone && Clock.Today(told) == Today;
        (told, asked) = (Zone, true);
        return onlyZone ? Task.CompletedTask : Again();
    }

    /// <summary>Reads once more.</summary>
    public async Task Again()
    {
        try
        {
            var client = await Api.Client();
            Me ??= await client.Me();
            if (Me.PasswordChangeOwed && !OpenToAll)
            {
                Navigation.NavigateTo("me");
                return;
            }
            await Read(client);
            Trouble = null;
            Ready = true;
        }
        catch (Exception e) when (e is Refused or HttpRequestException)
        {
            Trouble = e;
        }
        StateHasChanged();
    }

    /// <summary>The page is open to somebody who owes a password of his own.</summary>
    protected virtual bool OpenToAll => false;

    private protected abstract Task Read(RepairOrdersClient client);

    /// <summary>Puts a filter into the address, so that what is on the screen can be sent to somebody.</summary>
    protected void Ask(params (string Name, object? Value)[] parts) =>
        Navigation.NavigateTo(
            Navigation.GetUriWithQueryParameters(
                parts.ToDictionary(p => p.Name, p => p.Value is "" or false ? null : p.Value)
            ),
            replace: true
        );
}
