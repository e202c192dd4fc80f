using Microsoft.EntityFrameworkCore.Design;

namespace RepairOrders.Api.Store;

/// <summary>Lets the tool write migrations without a running store.</summary>
internal sealed class DesignTimeStore : IDesignTimeDbContextFactory<RepairStore>
{
    public RepairStore CreateDbContext(string[] args)
    {
        var options = new DbContextOptionsBuilder<RepairStore>();
        RepairOrdersApi.Configure(options, "Host=localhost");
        return new RepairStore(options.Options);
    }
}
