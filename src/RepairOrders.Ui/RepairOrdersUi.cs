using Microsoft.AspNetCore.Builder;
using Microsoft.Extensions.Hosting;

namespace RepairOrders.Ui;

/// <summary>The screens: a client of the API like any other.</summary>
public static class RepairOrdersUi
{
    /// <summary>Adds the screens; <c>Api:Address</c> says where the API is.</summary>
    public static void AddRepairOrdersUi(this IHostApplicationBuilder builder)
    {
        ArgumentNullException.ThrowIfNull(builder);
    }

    /// <summary>Maps the screens.</summary>
    public static void MapRepairOrdersUi(this WebApplication app)
    {
        ArgumentNullException.ThrowIfNull(app);
    }
}
