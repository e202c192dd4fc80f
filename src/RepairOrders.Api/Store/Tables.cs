using System.Text.Json;
using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore.ChangeTracking;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Microsoft.EntityFrameworkCore.Storage.ValueConversion;
using RepairOrders.Api.Approving;
using RepairOrders.Api.Assessing;
using RepairOrders.Api.Choosing;
using RepairOrders.Api.Closing;
using RepairOrders.Api.Consenting;
using RepairOrders.Api.Exiting;
using RepairOrders.Api.Extending;
using RepairOrders.Api.Failing;
using RepairOrders.Api.Figures;
using RepairOrders.Api.Fitting;
using RepairOrders.Api.Instruments;
using RepairOrders.Api.Issuing;
using RepairOrders.Api.Lines;
using RepairOrders.Api.MakingPermanent;
using RepairOrders.Api.Orders;
using RepairOrders.Api.Owning;
using RepairOrders.Api.People;
using RepairOrders.Api.Proving;
using RepairOrders.Api.Readying;
using RepairOrders.Api.Removing;
using RepairOrders.Api.Requesting;
using RepairOrders.Api.Reviewing;
using RepairOrders.Api.Revisiting;
using RepairOrders.Api.Shutdowns;
using RepairOrders.Api.Sites;
using RepairOrders.Api.Sizing;
using RepairOrders.Api.Stock;
using RepairOrders.Api.Wire;
using RepairOrders.Contract;

namespace RepairOrders.Api.Store;

/// <summary>The store on one page.</summary>
internal static class Tables
{
    public static void Map(ModelBuilder model)
    {
        // The steps, in the order of the procedure. Every record's table has the same columns.
        Record<Request>(model, "requests");
        Record<Assessment>(model, "assessments");
        Record<Choice>(model, "choices");
        Record<Deviation>(model, "deviations");
        Record<Design>(model, "designs");
        Record<Approval>(model, "approvals");
        Record<MaterialIssue>(model, "material_issues");
        Record<Substitution>(model, "substitutions");
        Record<MaterialReturn>(model, "material_returns");
        Record<MaterialUse>(model, "material_uses");
        Record<LiveFitConsent>(model, "live_fit_consents");
        Record<Readiness>(model, "readiness");
        Record<ClimateReading>(model, "climate_readings");
        Record<Mix>(model, "mixes");
        Record<MixUse>(model, "mix_uses");
        Record<CureReading>(model, "cure_readings");
        Record<HoldPointRelease>(model, "hold_point_releases");
        Record<Photo>(model, "photos");
        Record<Stop>(model, "stops");
        Record<Resumption>(model, "resumptions");
        Record<Proof>(model, "proofs");
        Record<ProofWitness>(model, "proof_witnesses");
        Record<TestWaiver>(model, "test_waivers");
        Record<DepartureAcceptance>(model, "departure_acceptances");
        Record<FirstLookAcceptance>(model, "first_look_acceptances");
        Record<Acceptance>(model, "acceptances");
        Record<Consent>(model, "consents");
        Record<Confirmation>(model, "consent_confirmations");
        Record<DebtPeriod>(model, "debt_periods");
        Record<Exit>(model, "exits");
        Record<ExitSignature>(model, "exit_signatures");
        Record<ServiceReturn>(model, "service_returns");
        Record<Visit>(model, "visits");
        Record<VisitCountersignature>(model, "visit_countersignatures");
        Record<Extension>(model, "extensions");
        Record<ExtensionDecision>(model, "extension_decisions");
        Record<Failure>(model, "failures");
        Record<MadeSafe>(model, "made_safe");
        Record<ContainmentAgreement>(model, "containment_agreements");
        Record<FailureStatement>(model, "failure_modes");
        Record<RemovalOrder>(model, "removal_orders");
        Record<Removal>(model, "removals");
        Record<RemovalInspection>(model, "removal_inspections");
        Record<PermanentFix>(model, "permanent_fixes");
        Record<CloseOut>(model, "close_outs");
        Record<CloseOutCountersignature>(model, "close_out_countersignatures");
        Record<HandOver>(model, "hand_overs");
        Record<Owner>(model, "owners");
        Record<EndMovedIn>(model, "end_dates_moved_in");
        Record<LadderAnswer>(model, "ladder_answers");
        Record<Review>(model, "reviews");

        model.Entity<SignedRecord>(record =>
        {
            record.UseTpcMappingStrategy();
            record.HasKey(r => r.Id);
            record.Property(r => r.Id).ValueGeneratedNever();
            record.Property(r => r.Body).HasColumnType("jsonb");
            record.Ignore(r => r.Summary).Ignore(r => r.Kind).Ignore(r => r.Tone).Ignore(r => r.Stands);
            record.HasIndex(r => r.OrderId);
        });
        model.Entity<RepairOrder>(Order);
        model.Entity<JournalEntry>(journal =>
        {
            journal.ToTable("journal").HasKey(j => new { j.OrderId, j.Line });
            journal.HasIndex(j => j.At).HasMethod("brin");
        });

        model.Entity<Site>(site =>
        {
            site.ToTable("sites").Property(s => s.Id).ValueGeneratedNever();
            site.HasIndex(s => s.ShortName).IsUnique();
            site.OwnsMany(s => s.Areas, a => a.ToJson());
            site.Ignore(s => s.FiguresAwaiting).Ignore(s => s.FiguresInForce).Ignore(s => s.FiguresVersionInForce);
            // The list is only ever replaced as a whole.
            site.Property(s => s.Figures)
                .HasColumnType("jsonb")
                .HasConversion(
                    list => JsonSerializer.Serialize(list, RepairOrdersClient.Json),
                    text => JsonSerializer.Deserialize<IReadOnlyList<FiguresVersion>>(text, RepairOrdersClient.Json)!,
                    new ValueComparer<IReadOnlyList<FiguresVersion>>(
                        (a, b) => ReferenceEquals(a, b),
                        list => list.GetHashCode(),
                        list => list
                    )
                );
        });
        model.Entity<Line>(line =>
        {
            line.ToTable("lines").Property(l => l.Id).ValueGeneratedNever();
            line.HasIndex(l => new { l.SiteId, l.Number }).IsUnique();
        });

        model.Entity<Shutdown>(shutdown =>
        {
            shutdown.ToTable("shutdowns").Property(s => s.Id).ValueGeneratedNever();
            shutdown.Property(s => s.Version).IsRowVersion();
            shutdown.HasIndex(s => new { s.SiteId, s.Name }).IsUnique();
            shutdown.HasOne(s => s.Site).WithMany().HasForeignKey(s => s.SiteId);
            shutdown.HasMany(s => s.Moves).WithOne().HasForeignKey(m => m.ShutdownId);
        });
        model.Entity<ShutdownMove>().ToTable("shutdown_moves").Property(m => m.Id).ValueGeneratedNever();
        Kept<Person>(model);
        Kept<Site>(model);
        Kept<Line>(model);
        Kept<EmergencyMethod>(model);
        model.Entity<EmergencyMethod>(method =>
        {
            method.ToTable("emergency_methods").Property(m => m.Id).ValueGeneratedNever();
            method.Property(m => m.Body).HasColumnType("jsonb");
            method.Ignore(m => m.Entry).Ignore(m => m.GoodUntil);
            method.HasOne(m => m.Site).WithMany().HasForeignKey(m => m.SiteId);
        });
        model.Entity<Change>().ToTable("changes").HasKey(c => new { c.SubjectId, c.Line });

        Stock(model);
        People(model);
        model.Entity<KeptAnswer>().ToTable("kept_answers").HasKey(a => new { a.PersonId, a.Key });

        // A signed record outlives everything it points at: nothing is deleted by way of something else.
        foreach (var key in model.Model.GetEntityTypes().SelectMany(e => e.GetForeignKeys()).Where(k => !k.IsOwnership))
            key.DeleteBehavior = DeleteBehavior.Restrict;
    }

    private static void Record<T>(ModelBuilder model, string table)
        where T : SignedRecord => model.Entity<T>().ToTable(table).Ignore("Asked");

    // The count of its changes is its version.
    private static void Kept<T>(ModelBuilder model)
        where T : class, IKept =>
        model.Entity<T>().Ignore(nameof(IKept.Kind)).Property(k => k.Revision).IsConcurrencyToken();

    private static void Order(EntityTypeBuilder<RepairOrder> order)
    {
        order.ToTable("orders").HasKey(o => o.Id);
        order.Property(o => o.Id).ValueGeneratedNever();
        order.Property(o => o.Version).IsRowVersion();
        order.HasIndex(o => o.Number).IsUnique();
        order.HasOne(o => o.Site).WithMany().HasForeignKey(o => o.SiteId);
        order.HasOne(o => o.Line).WithMany().HasForeignKey(o => o.LineId);
        order.Ignore(o => o.Stage).Ignore(o => o.Request).Ignore(o => o.Surroundings);
        order.Ignore(o => o.ApprovedDesign).Ignore(o => o.PendingDesign);
        order.HasMany(o => o.Records).WithOne().HasForeignKey(r => r.OrderId);
        order.HasMany(o => o.Journal).WithOne().HasForeignKey(j => j.OrderId);
        order.ComplexProperty(o => o.Columns, Columns);
    }

    // Each column has its property's own name; a list asks for open work by site and date, a search by three-letter parts.
    private static void Columns(ComplexPropertyBuilder<OrderColumns> columns)
    {
        foreach (var property in typeof(OrderColumns).GetProperties().Where(p => p.CanWrite))
            columns.Property(property.PropertyType, property.Name).HasColumnName(Snake(property.Name));
        columns.Property(c => c.Stage).HasConversion<string>();
        columns.Property(c => c.SignedClass).HasConversion<string>();
    }

    private static string Snake(string name) => JsonNamingPolicy.SnakeCaseLower.ConvertName(name);

    private static void Stock(ModelBuilder model)
    {
        model.Entity<StockItem>(item =>
        {
            item.ToTable("stock_items").Property(i => i.Id).ValueGeneratedNever();
            item.Ignore(i => i.Kind).Property(i => i.Version).IsRowVersion();
            item.Property(i => i.Limits).HasColumnType("jsonb").HasConversion(Json<MaterialLimits>());
            item.HasIndex(i => new { i.SiteId, i.Code }).IsUnique();
        });
        model.Entity<Batch>(batch =>
        {
            batch.ToTable("batches").Property(b => b.Id).ValueGeneratedNever();
            batch.Property(b => b.Standing).HasConversion<string>();
            batch.HasOne(b => b.Item).WithMany().HasForeignKey(b => b.ItemId);
            batch.HasMany(b => b.Judgements).WithOne().HasForeignKey(j => j.BatchId);
            batch.HasIndex(b => new { b.ItemId, b.Number }).IsUnique();
        });
        model.Entity<BatchJudgement>(judgement =>
        {
            judgement.ToTable("batch_judgements").Property(j => j.Id).ValueGeneratedNever();
            judgement.Property(j => j.Standing).HasConversion<string>();
        });
        model.Entity<StockMove>(move =>
        {
            move.ToTable("stock_moves").Property(m => m.Id).ValueGeneratedNever();
            move.Property(m => m.Quantity).HasPrecision(14, 3);
            move.Property(m => m.From).HasConversion<string>();
            move.Property(m => m.To).HasConversion<string>();
            move.HasOne<Batch>().WithMany().HasForeignKey(m => m.BatchId);
            move.HasOne<RepairOrder>().WithMany().HasForeignKey(m => m.OrderId);
        });
        model.Entity<Bin>(bin =>
        {
            bin.ToTable("bins").Property(b => b.Id).ValueGeneratedNever();
            bin.Ignore(b => b.Kind).Property(b => b.Version).IsRowVersion();
            bin.OwnsMany(b => b.Kit, k => k.ToJson());
            bin.HasIndex(b => new { b.SiteId, b.Code }).IsUnique();
        });
        model.Entity<PhotoBlock>().ToTable("photo_blocks").HasKey(b => new { b.PhotoId, b.Number });
        model.Entity<PhotoThumbnail>().ToTable("photo_thumbnails").HasKey(t => t.PhotoId);
        model.Entity<StockCount>().ToTable("stock_counts").Property(c => c.Id).ValueGeneratedNever();
        model.Entity<Instrument>(instrument =>
        {
            instrument.ToTable("instruments").Property(i => i.Id).ValueGeneratedNever();
            instrument.Property(i => i.Version).IsRowVersion();
            instrument.Property(i => i.Kind).HasConversion<string>();
            instrument.Property(i => i.GreatestReading).HasColumnType("jsonb").HasConversion(Json<Measure>());
            instrument.HasIndex(i => new { i.SiteId, i.Serial }).IsUnique();
        });
    }

    private static ValueConverter<T?, string> Json<T>()
        where T : class =>
        new(
            value => JsonSerializer.Serialize(value, RepairOrdersClient.Json),
            text => JsonSerializer.Deserialize<T>(text, RepairOrdersClient.Json)
        );

    private static void People(ModelBuilder model)
    {
        model.Entity<Person>(person =>
        {
            person.ToTable("people").Property(p => p.Id).ValueGeneratedNever();
            person.PrimitiveCollection(p => p.Roles).ElementType().HasConversion<string>();
            person.OwnsMany(p => p.Competences, c => c.ToJson());
            person.Ignore(p => p.PasswordChangeOwed);
        });
        model.Entity<IdentityUserClaim<Guid>>().ToTable("person_claims");
        model.Entity<IdentityUserLogin<Guid>>().ToTable("person_logins");
        model.Entity<IdentityUserToken<Guid>>().ToTable("person_tokens");
        model.Entity<Session>(session =>
        {
            session.ToTable("sessions").HasKey(s => s.TokenHash);
            session.HasIndex(s => s.Id).IsUnique();
            session.HasOne(s => s.Person).WithMany().HasForeignKey(s => s.PersonId);
        });
        model.Entity<FirstAdministrator>(offer =>
            offer.ToTable("first_administrators").Property(o => o.Id).ValueGeneratedNever()
        );
        model
            .Entity<Microsoft.AspNetCore.DataProtection.EntityFrameworkCore.DataProtectionKey>()
            .ToTable("data_protection_keys");
    }
}
