using Microsoft.AspNetCore.DataProtection.EntityFrameworkCore;
using Microsoft.AspNetCore.Identity.EntityFrameworkCore;
using RepairOrders.Api.Consenting;
using RepairOrders.Api.Lines;
using RepairOrders.Api.Orders;
using RepairOrders.Api.People;
using RepairOrders.Api.Shutdowns;
using RepairOrders.Api.Sites;
using RepairOrders.Api.Wire;

namespace RepairOrders.Api.Store;

/// <summary>The store. <see cref="Order"/> loads the sheaf; <c>SaveChangesAsync</c> is the transaction.</summary>
internal sealed class RepairStore(DbContextOptions<RepairStore> options)
    : IdentityUserContext<Person, Guid>(options),
        IDataProtectionKeyContext
{
    public DbSet<RepairOrder> Orders => Set<RepairOrder>();
    public DbSet<SignedRecord> Records => Set<SignedRecord>();
    public DbSet<JournalEntry> Journal => Set<JournalEntry>();
    public DbSet<Site> Sites => Set<Site>();
    public DbSet<Line> Lines => Set<Line>();
    public DbSet<EmergencyMethod> EmergencyMethods => Set<EmergencyMethod>();
    public DbSet<Shutdown> Shutdowns => Set<Shutdown>();
    public DbSet<Change> Changes => Set<Change>();
    public DbSet<Session> Sessions => Set<Session>();
    public DbSet<FirstAdministrator> FirstAdministrators => Set<FirstAdministrator>();
    public DbSet<KeptAnswer> KeptAnswers => Set<KeptAnswer>();
    public DbSet<DataProtectionKey> DataProtectionKeys => Set<DataProtectionKey>();

    /// <summary>The version of the order this request wrote; nothing when it wrote none, or several.</summary>
    public uint? WrittenVersion =>
        ChangeTracker.Entries<RepairOrder>().Take(2).ToList() is [var only] ? only.Entity.Version : null;

    /// <summary>The order with its whole sheaf, if the person may see it.</summary>
    /// <exception cref="NotHere">There is none that he may see.</exception>
    /// <exception cref="DbUpdateConcurrencyException">It changed since <paramref name="seen"/>.</exception>
    public async Task<RepairOrder> Order(
        string number,
        Person by,
        SeenVersion? seen = null,
        CancellationToken stop = default
    )
    {
        // A write takes the order's row before it reads: whoever adds meanwhile waits a moment instead of losing his turn.
        if (Database.CurrentTransaction is not null)
            await Database.ExecuteSqlAsync($"SELECT 1 FROM orders WHERE number = {number} FOR UPDATE", stop);
        var order = await Orders.Whole().SingleOrDefaultAsync(o => o.Number == number, stop);
        if (order is null || !by.MaySee(order.Site.ShortName))
            throw new NotHere($"There is no order {number} that you may see.");
        if (seen is not null && seen.Value != order.Version)
            throw new DbUpdateConcurrencyException();
        order.Surroundings = await Surroundings.Of(order, this, stop);
        return order;
    }

    /// <summary>The site, its counter locked until the transaction ends, so that no number is given twice.</summary>
    public async Task<Site> SiteForNumbering(string shortName, Person by)
    {
        var site = await Sites
            .FromSql($"SELECT * FROM sites WHERE short_name = {shortName} FOR UPDATE")
            .SingleOrDefaultAsync(CancellationToken.None);
        return site is null || !by.MaySee(shortName)
            ? throw new NotHere($"There is no site {shortName} that you may see.")
            : site;
    }

    protected override void OnModelCreating(ModelBuilder builder)
    {
        base.OnModelCreating(builder);
        Tables.Map(builder);
    }
}
