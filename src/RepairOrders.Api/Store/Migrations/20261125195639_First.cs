using System;
using System.Collections.Generic;
using Microsoft.EntityFrameworkCore.Migrations;
using Npgsql.EntityFrameworkCore.PostgreSQL.Metadata;

#nullable disable

namespace RepairOrders.Api.Store.Migrations
{
    /// <inheritdoc />
    internal partial class First : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "bins",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    site_id = table.Column<Guid>(type: "uuid", nullable: false),
                    code = table.Column<string>(type: "text", nullable: false),
                    words = table.Column<string>(type: "text", nullable: false),
                    locker = table.Column<bool>(type: "boolean", nullable: false),
                    counted_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false),
                    revision = table.Column<int>(type: "integer", nullable: false),
                    changes_hash = table.Column<string>(type: "text", nullable: false),
                    kit = table.Column<string>(type: "jsonb", nullable: true),
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_bins", x => x.id);
                }
            );

            migrationBuilder.CreateTable(
                name: "changes",
                columns: table => new
                {
                    subject_id = table.Column<Guid>(type: "uuid", nullable: false),
                    line = table.Column<int>(type: "integer", nullable: false),
                    kind = table.Column<string>(type: "text", nullable: false),
                    at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    by_id = table.Column<Guid>(type: "uuid", nullable: false),
                    by = table.Column<string>(type: "text", nullable: false),
                    what = table.Column<string>(type: "text", nullable: false),
                    why = table.Column<string>(type: "text", nullable: true),
                    old = table.Column<string>(type: "text", nullable: true),
                    @new = table.Column<string>(name: "new", type: "text", nullable: true),
                    previous_hash = table.Column<string>(type: "text", nullable: false),
                    hash = table.Column<string>(type: "text", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_changes", x => new { x.subject_id, x.line });
                }
            );

            migrationBuilder.CreateTable(
                name: "data_protection_keys",
                columns: table => new
                {
                    id = table
                        .Column<int>(type: "integer", nullable: false)
                        .Annotation(
                            "Npgsql:ValueGenerationStrategy",
                            NpgsqlValueGenerationStrategy.IdentityByDefaultColumn
                        ),
                    friendly_name = table.Column<string>(type: "text", nullable: true),
                    xml = table.Column<string>(type: "text", nullable: true),
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_data_protection_keys", x => x.id);
                }
            );

            migrationBuilder.CreateTable(
                name: "first_administrators",
                columns: table => new
                {
                    id = table.Column<int>(type: "integer", nullable: false),
                    token_hash = table.Column<string>(type: "text", nullable: false),
                    until = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    used_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_first_administrators", x => x.id);
                }
            );

            migrationBuilder.CreateTable(
                name: "instruments",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    site_id = table.Column<Guid>(type: "uuid", nullable: false),
                    serial = table.Column<string>(type: "text", nullable: false),
                    kind = table.Column<string>(type: "text", nullable: false),
                    words = table.Column<string>(type: "text", nullable: false),
                    calibration_due = table.Column<DateOnly>(type: "date", nullable: false),
                    calibration_reference = table.Column<string>(type: "text", nullable: true),
                    greatest_reading = table.Column<string>(type: "jsonb", nullable: true),
                    withdrawn = table.Column<string>(type: "text", nullable: true),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false),
                    revision = table.Column<int>(type: "integer", nullable: false),
                    changes_hash = table.Column<string>(type: "text", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_instruments", x => x.id);
                }
            );

            migrationBuilder.CreateTable(
                name: "kept_answers",
                columns: table => new
                {
                    person_id = table.Column<Guid>(type: "uuid", nullable: false),
                    key = table.Column<string>(type: "text", nullable: false),
                    ask = table.Column<string>(type: "text", nullable: false),
                    body_hash = table.Column<string>(type: "text", nullable: false),
                    status = table.Column<int>(type: "integer", nullable: false),
                    body = table.Column<string>(type: "text", nullable: false),
                    e_tag = table.Column<string>(type: "text", nullable: true),
                    location = table.Column<string>(type: "text", nullable: true),
                    at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_kept_answers", x => new { x.person_id, x.key });
                }
            );

            migrationBuilder.CreateTable(
                name: "lines",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    site_id = table.Column<Guid>(type: "uuid", nullable: false),
                    number = table.Column<string>(type: "text", nullable: false),
                    area = table.Column<string>(type: "text", nullable: false),
                    section = table.Column<string>(type: "text", nullable: false),
                    nps = table.Column<string>(type: "text", nullable: false),
                    dn = table.Column<int>(type: "integer", nullable: true),
                    outside_diameter_mm = table.Column<double>(type: "double precision", nullable: false),
                    nominal_wall_mm = table.Column<double>(type: "double precision", nullable: false),
                    grade = table.Column<string>(type: "text", nullable: false),
                    fluid = table.Column<string>(type: "text", nullable: false),
                    fluid_state = table.Column<string>(type: "text", nullable: false),
                    fluid_group = table.Column<int>(type: "integer", nullable: false),
                    service_category = table.Column<string>(type: "text", nullable: false),
                    inspection_class = table.Column<int>(type: "integer", nullable: false),
                    flammable = table.Column<bool>(type: "boolean", nullable: false),
                    toxic = table.Column<bool>(type: "boolean", nullable: false),
                    auto_ignition_c = table.Column<double>(type: "double precision", nullable: true),
                    design_pressure_bar = table.Column<double>(type: "double precision", nullable: false),
                    design_temperature_c = table.Column<double>(type: "double precision", nullable: false),
                    operating_pressure_bar = table.Column<double>(type: "double precision", nullable: false),
                    operating_temperature_c = table.Column<double>(type: "double precision", nullable: false),
                    lagged = table.Column<bool>(type: "boolean", nullable: false),
                    potable = table.Column<bool>(type: "boolean", nullable: false),
                    safety_critical = table.Column<bool>(type: "boolean", nullable: false),
                    year_installed = table.Column<int>(type: "integer", nullable: true),
                    retired = table.Column<bool>(type: "boolean", nullable: false),
                    revision = table.Column<int>(type: "integer", nullable: false),
                    changes_hash = table.Column<string>(type: "text", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_lines", x => x.id);
                }
            );

            migrationBuilder.CreateTable(
                name: "people",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    full_name = table.Column<string>(type: "text", nullable: false),
                    roles = table.Column<string[]>(type: "text[]", nullable: false),
                    sites = table.Column<List<string>>(type: "text[]", nullable: false),
                    disabled = table.Column<bool>(type: "boolean", nullable: false),
                    outside_scope = table.Column<string>(type: "text", nullable: true),
                    authority_until = table.Column<DateOnly>(type: "date", nullable: true),
                    one_time_password_until = table.Column<DateTimeOffset>(
                        type: "timestamp with time zone",
                        nullable: true
                    ),
                    short_code_hash = table.Column<string>(type: "text", nullable: true),
                    short_code_tries = table.Column<int>(type: "integer", nullable: false),
                    revision = table.Column<int>(type: "integer", nullable: false),
                    changes_hash = table.Column<string>(type: "text", nullable: false),
                    user_name = table.Column<string>(type: "character varying(256)", maxLength: 256, nullable: true),
                    normalized_user_name = table.Column<string>(
                        type: "character varying(256)",
                        maxLength: 256,
                        nullable: true
                    ),
                    email = table.Column<string>(type: "character varying(256)", maxLength: 256, nullable: true),
                    normalized_email = table.Column<string>(
                        type: "character varying(256)",
                        maxLength: 256,
                        nullable: true
                    ),
                    email_confirmed = table.Column<bool>(type: "boolean", nullable: false),
                    password_hash = table.Column<string>(type: "text", nullable: true),
                    security_stamp = table.Column<string>(type: "text", nullable: true),
                    concurrency_stamp = table.Column<string>(type: "text", nullable: true),
                    phone_number = table.Column<string>(type: "text", nullable: true),
                    phone_number_confirmed = table.Column<bool>(type: "boolean", nullable: false),
                    two_factor_enabled = table.Column<bool>(type: "boolean", nullable: false),
                    lockout_end = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    lockout_enabled = table.Column<bool>(type: "boolean", nullable: false),
                    access_failed_count = table.Column<int>(type: "integer", nullable: false),
                    competences = table.Column<string>(type: "jsonb", nullable: true),
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_people", x => x.id);
                }
            );

            migrationBuilder.CreateTable(
                name: "photo_blocks",
                columns: table => new
                {
                    photo_id = table.Column<Guid>(type: "uuid", nullable: false),
                    number = table.Column<int>(type: "integer", nullable: false),
                    bytes = table.Column<byte[]>(type: "bytea", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_photo_blocks", x => new { x.photo_id, x.number });
                }
            );

            migrationBuilder.CreateTable(
                name: "photo_thumbnails",
                columns: table => new
                {
                    photo_id = table.Column<Guid>(type: "uuid", nullable: false),
                    bytes = table.Column<byte[]>(type: "bytea", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_photo_thumbnails", x => x.photo_id);
                }
            );

            migrationBuilder.CreateTable(
                name: "sites",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    short_name = table.Column<string>(type: "text", nullable: false),
                    name = table.Column<string>(type: "text", nullable: false),
                    time_zone = table.Column<string>(type: "text", nullable: false),
                    figures = table.Column<string>(type: "jsonb", nullable: false),
                    revision = table.Column<int>(type: "integer", nullable: false),
                    changes_hash = table.Column<string>(type: "text", nullable: false),
                    last_number = table.Column<int>(type: "integer", nullable: false),
                    areas = table.Column<string>(type: "jsonb", nullable: true),
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_sites", x => x.id);
                }
            );

            migrationBuilder.CreateTable(
                name: "stock_counts",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    bin_id = table.Column<Guid>(type: "uuid", nullable: false),
                    by_id = table.Column<Guid>(type: "uuid", nullable: false),
                    by = table.Column<string>(type: "text", nullable: false),
                    at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    remark = table.Column<string>(type: "text", nullable: true),
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_stock_counts", x => x.id);
                }
            );

            migrationBuilder.CreateTable(
                name: "stock_items",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    site_id = table.Column<Guid>(type: "uuid", nullable: false),
                    code = table.Column<string>(type: "text", nullable: false),
                    words = table.Column<string>(type: "text", nullable: false),
                    need = table.Column<string>(type: "text", nullable: false),
                    unit = table.Column<string>(type: "text", nullable: false),
                    expires = table.Column<bool>(type: "boolean", nullable: false),
                    needs_certificate = table.Column<bool>(type: "boolean", nullable: false),
                    limits = table.Column<string>(type: "jsonb", nullable: true),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false),
                    revision = table.Column<int>(type: "integer", nullable: false),
                    changes_hash = table.Column<string>(type: "text", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_stock_items", x => x.id);
                }
            );

            migrationBuilder.CreateTable(
                name: "person_claims",
                columns: table => new
                {
                    id = table
                        .Column<int>(type: "integer", nullable: false)
                        .Annotation(
                            "Npgsql:ValueGenerationStrategy",
                            NpgsqlValueGenerationStrategy.IdentityByDefaultColumn
                        ),
                    user_id = table.Column<Guid>(type: "uuid", nullable: false),
                    claim_type = table.Column<string>(type: "text", nullable: true),
                    claim_value = table.Column<string>(type: "text", nullable: true),
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_person_claims", x => x.id);
                    table.ForeignKey(
                        name: "fk_person_claims_people_user_id",
                        column: x => x.user_id,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict
                    );
                }
            );

            migrationBuilder.CreateTable(
                name: "person_logins",
                columns: table => new
                {
                    login_provider = table.Column<string>(type: "text", nullable: false),
                    provider_key = table.Column<string>(type: "text", nullable: false),
                    provider_display_name = table.Column<string>(type: "text", nullable: true),
                    user_id = table.Column<Guid>(type: "uuid", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_person_logins", x => new { x.login_provider, x.provider_key });
                    table.ForeignKey(
                        name: "fk_person_logins_people_user_id",
                        column: x => x.user_id,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict
                    );
                }
            );

            migrationBuilder.CreateTable(
                name: "person_tokens",
                columns: table => new
                {
                    user_id = table.Column<Guid>(type: "uuid", nullable: false),
                    login_provider = table.Column<string>(type: "text", nullable: false),
                    name = table.Column<string>(type: "text", nullable: false),
                    value = table.Column<string>(type: "text", nullable: true),
                },
                constraints: table =>
                {
                    table.PrimaryKey(
                        "pk_person_tokens",
                        x => new
                        {
                            x.user_id,
                            x.login_provider,
                            x.name,
                        }
                    );
                    table.ForeignKey(
                        name: "fk_person_tokens_people_user_id",
                        column: x => x.user_id,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict
                    );
                }
            );

            migrationBuilder.CreateTable(
                name: "sessions",
                columns: table => new
                {
                    token_hash = table.Column<string>(type: "text", nullable: false),
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    person_id = table.Column<Guid>(type: "uuid", nullable: false),
                    since = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    until = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    revoked_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    device = table.Column<string>(type: "text", nullable: true),
                    address = table.Column<string>(type: "text", nullable: true),
                    order_number = table.Column<string>(type: "text", nullable: true),
                    on_device_of = table.Column<Guid>(type: "uuid", nullable: true),
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_sessions", x => x.token_hash);
                    table.ForeignKey(
                        name: "fk_sessions_users_person_id",
                        column: x => x.person_id,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict
                    );
                }
            );

            migrationBuilder.CreateTable(
                name: "emergency_methods",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    site_id = table.Column<Guid>(type: "uuid", nullable: false),
                    body = table.Column<string>(type: "jsonb", nullable: false),
                    first_by_id = table.Column<Guid>(type: "uuid", nullable: false),
                    first_by = table.Column<string>(type: "text", nullable: false),
                    first_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    first_is_engineer = table.Column<bool>(type: "boolean", nullable: false),
                    second_by_id = table.Column<Guid>(type: "uuid", nullable: true),
                    second_by = table.Column<string>(type: "text", nullable: true),
                    second_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    withdrawn_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    withdrawn_why = table.Column<string>(type: "text", nullable: true),
                    revision = table.Column<int>(type: "integer", nullable: false),
                    changes_hash = table.Column<string>(type: "text", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_emergency_methods", x => x.id);
                    table.ForeignKey(
                        name: "fk_emergency_methods_sites_site_id",
                        column: x => x.site_id,
                        principalTable: "sites",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict
                    );
                }
            );

            migrationBuilder.CreateTable(
                name: "orders",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    number = table.Column<string>(type: "text", nullable: false),
                    site_id = table.Column<Guid>(type: "uuid", nullable: false),
                    line_id = table.Column<Guid>(type: "uuid", nullable: true),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false),
                    journal_lines = table.Column<int>(type: "integer", nullable: false),
                    journal_hash = table.Column<string>(type: "text", nullable: false),
                    round = table.Column<int>(type: "integer", nullable: false),
                    answered_at = table.Column<DateTimeOffset[]>(type: "timestamp with time zone[]", nullable: false),
                    approval_owed_until = table.Column<DateTimeOffset>(
                        type: "timestamp with time zone",
                        nullable: true
                    ),
                    batches = table.Column<Guid[]>(type: "uuid[]", nullable: false),
                    class_a_from = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    class_b_from = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    class_c_from = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    class_d_from = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    counts_neighbours = table.Column<bool>(type: "boolean", nullable: false),
                    curing_until = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    end_date = table.Column<DateOnly>(type: "date", nullable: true),
                    ends_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    extensions = table.Column<int>(type: "integer", nullable: false),
                    fluid = table.Column<string>(type: "text", nullable: false),
                    in_service_since = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    last_leak_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    last_look_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    leaked_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    leaks_since = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    live = table.Column<bool>(type: "boolean", nullable: false),
                    look_due_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    look_overdue_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    method = table.Column<string>(type: "text", nullable: true),
                    open = table.Column<bool>(type: "boolean", nullable: false),
                    owner = table.Column<string>(type: "text", nullable: true),
                    owner_id = table.Column<Guid>(type: "uuid", nullable: true),
                    permanent_fix = table.Column<string>(type: "text", nullable: true),
                    permanent_fix_on = table.Column<DateOnly>(type: "date", nullable: true),
                    permit_until = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    place = table.Column<string>(type: "text", nullable: false),
                    reassessment_owed_from = table.Column<DateTimeOffset>(
                        type: "timestamp with time zone",
                        nullable: true
                    ),
                    reassessment_why = table.Column<string>(type: "text", nullable: true),
                    removal_owed_from = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    removal_why = table.Column<string>(type: "text", nullable: true),
                    settled_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    shutdown = table.Column<string>(type: "text", nullable: true),
                    signed_class = table.Column<string>(type: "text", nullable: true),
                    stage = table.Column<string>(type: "text", nullable: false),
                    stop_why = table.Column<string>(type: "text", nullable: true),
                    stopped_since = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    thickness_due_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    thickness_planned_at = table.Column<DateTimeOffset>(
                        type: "timestamp with time zone",
                        nullable: true
                    ),
                    words = table.Column<string>(type: "text", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_orders", x => x.id);
                    table.ForeignKey(
                        name: "fk_orders_lines_line_id",
                        column: x => x.line_id,
                        principalTable: "lines",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict
                    );
                    table.ForeignKey(
                        name: "fk_orders_sites_site_id",
                        column: x => x.site_id,
                        principalTable: "sites",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict
                    );
                }
            );

            migrationBuilder.CreateTable(
                name: "shutdowns",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    site_id = table.Column<Guid>(type: "uuid", nullable: false),
                    name = table.Column<string>(type: "text", nullable: false),
                    area = table.Column<string>(type: "text", nullable: true),
                    start = table.Column<DateOnly>(type: "date", nullable: false),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_shutdowns", x => x.id);
                    table.ForeignKey(
                        name: "fk_shutdowns_sites_site_id",
                        column: x => x.site_id,
                        principalTable: "sites",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict
                    );
                }
            );

            migrationBuilder.CreateTable(
                name: "batches",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    item_id = table.Column<Guid>(type: "uuid", nullable: false),
                    number = table.Column<string>(type: "text", nullable: false),
                    expiry = table.Column<DateOnly>(type: "date", nullable: true),
                    certificate = table.Column<string>(type: "text", nullable: true),
                    standing = table.Column<string>(type: "text", nullable: false),
                    standing_why = table.Column<string>(type: "text", nullable: true),
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_batches", x => x.id);
                    table.ForeignKey(
                        name: "fk_batches_stock_items_item_id",
                        column: x => x.item_id,
                        principalTable: "stock_items",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict
                    );
                }
            );

            migrationBuilder.CreateTable(
                name: "acceptances",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    order_id = table.Column<Guid>(type: "uuid", nullable: false),
                    round = table.Column<int>(type: "integer", nullable: false),
                    by_id = table.Column<Guid>(type: "uuid", nullable: false),
                    by = table.Column<string>(type: "text", nullable: false),
                    at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    set_aside_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    set_aside_by = table.Column<string>(type: "text", nullable: true),
                    set_aside_why = table.Column<string>(type: "text", nullable: true),
                    body = table.Column<string>(type: "jsonb", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_acceptances", x => x.id);
                    table.ForeignKey(
                        name: "FK_acceptances_orders_order_id",
                        column: x => x.order_id,
                        principalTable: "orders",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict
                    );
                }
            );

            migrationBuilder.CreateTable(
                name: "approvals",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    order_id = table.Column<Guid>(type: "uuid", nullable: false),
                    round = table.Column<int>(type: "integer", nullable: false),
                    by_id = table.Column<Guid>(type: "uuid", nullable: false),
                    by = table.Column<string>(type: "text", nullable: false),
                    at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    set_aside_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    set_aside_by = table.Column<string>(type: "text", nullable: true),
                    set_aside_why = table.Column<string>(type: "text", nullable: true),
                    body = table.Column<string>(type: "jsonb", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_approvals", x => x.id);
                    table.ForeignKey(
                        name: "FK_approvals_orders_order_id",
                        column: x => x.order_id,
                        principalTable: "orders",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict
                    );
                }
            );

            migrationBuilder.CreateTable(
                name: "assessments",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    order_id = table.Column<Guid>(type: "uuid", nullable: false),
                    round = table.Column<int>(type: "integer", nullable: false),
                    by_id = table.Column<Guid>(type: "uuid", nullable: false),
                    by = table.Column<string>(type: "text", nullable: false),
                    at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    set_aside_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    set_aside_by = table.Column<string>(type: "text", nullable: true),
                    set_aside_why = table.Column<string>(type: "text", nullable: true),
                    body = table.Column<string>(type: "jsonb", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_assessments", x => x.id);
                    table.ForeignKey(
                        name: "FK_assessments_orders_order_id",
                        column: x => x.order_id,
                        principalTable: "orders",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict
                    );
                }
            );

            migrationBuilder.CreateTable(
                name: "choices",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    order_id = table.Column<Guid>(type: "uuid", nullable: false),
                    round = table.Column<int>(type: "integer", nullable: false),
                    by_id = table.Column<Guid>(type: "uuid", nullable: false),
                    by = table.Column<string>(type: "text", nullable: false),
                    at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    set_aside_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    set_aside_by = table.Column<string>(type: "text", nullable: true),
                    set_aside_why = table.Column<string>(type: "text", nullable: true),
                    body = table.Column<string>(type: "jsonb", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_choices", x => x.id);
                    table.ForeignKey(
                        name: "FK_choices_orders_order_id",
                        column: x => x.order_id,
                        principalTable: "orders",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict
                    );
                }
            );

            migrationBuilder.CreateTable(
                name: "climate_readings",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    order_id = table.Column<Guid>(type: "uuid", nullable: false),
                    round = table.Column<int>(type: "integer", nullable: false),
                    by_id = table.Column<Guid>(type: "uuid", nullable: false),
                    by = table.Column<string>(type: "text", nullable: false),
                    at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    set_aside_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    set_aside_by = table.Column<string>(type: "text", nullable: true),
                    set_aside_why = table.Column<string>(type: "text", nullable: true),
                    body = table.Column<string>(type: "jsonb", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_climate_readings", x => x.id);
                    table.ForeignKey(
                        name: "FK_climate_readings_orders_order_id",
                        column: x => x.order_id,
                        principalTable: "orders",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict
                    );
                }
            );

            migrationBuilder.CreateTable(
                name: "close_out_countersignatures",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    order_id = table.Column<Guid>(type: "uuid", nullable: false),
                    round = table.Column<int>(type: "integer", nullable: false),
                    by_id = table.Column<Guid>(type: "uuid", nullable: false),
                    by = table.Column<string>(type: "text", nullable: false),
                    at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    set_aside_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    set_aside_by = table.Column<string>(type: "text", nullable: true),
                    set_aside_why = table.Column<string>(type: "text", nullable: true),
                    body = table.Column<string>(type: "jsonb", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_close_out_countersignatures", x => x.id);
                    table.ForeignKey(
                        name: "FK_close_out_countersignatures_orders_order_id",
                        column: x => x.order_id,
                        principalTable: "orders",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict
                    );
                }
            );

            migrationBuilder.CreateTable(
                name: "close_outs",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    order_id = table.Column<Guid>(type: "uuid", nullable: false),
                    round = table.Column<int>(type: "integer", nullable: false),
                    by_id = table.Column<Guid>(type: "uuid", nullable: false),
                    by = table.Column<string>(type: "text", nullable: false),
                    at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    set_aside_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    set_aside_by = table.Column<string>(type: "text", nullable: true),
                    set_aside_why = table.Column<string>(type: "text", nullable: true),
                    body = table.Column<string>(type: "jsonb", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_close_outs", x => x.id);
                    table.ForeignKey(
                        name: "FK_close_outs_orders_order_id",
                        column: x => x.order_id,
                        principalTable: "orders",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict
                    );
                }
            );

            migrationBuilder.CreateTable(
                name: "consent_confirmations",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    order_id = table.Column<Guid>(type: "uuid", nullable: false),
                    round = table.Column<int>(type: "integer", nullable: false),
                    by_id = table.Column<Guid>(type: "uuid", nullable: false),
                    by = table.Column<string>(type: "text", nullable: false),
                    at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    set_aside_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    set_aside_by = table.Column<string>(type: "text", nullable: true),
                    set_aside_why = table.Column<string>(type: "text", nullable: true),
                    body = table.Column<string>(type: "jsonb", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_consent_confirmations", x => x.id);
                    table.ForeignKey(
                        name: "FK_consent_confirmations_orders_order_id",
                        column: x => x.order_id,
                        principalTable: "orders",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict
                    );
                }
            );

            migrationBuilder.CreateTable(
                name: "consents",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    order_id = table.Column<Guid>(type: "uuid", nullable: false),
                    round = table.Column<int>(type: "integer", nullable: false),
                    by_id = table.Column<Guid>(type: "uuid", nullable: false),
                    by = table.Column<string>(type: "text", nullable: false),
                    at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    set_aside_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    set_aside_by = table.Column<string>(type: "text", nullable: true),
                    set_aside_why = table.Column<string>(type: "text", nullable: true),
                    body = table.Column<string>(type: "jsonb", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_consents", x => x.id);
                    table.ForeignKey(
                        name: "FK_consents_orders_order_id",
                        column: x => x.order_id,
                        principalTable: "orders",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict
                    );
                }
            );

            migrationBuilder.CreateTable(
                name: "containment_agreements",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    order_id = table.Column<Guid>(type: "uuid", nullable: false),
                    round = table.Column<int>(type: "integer", nullable: false),
                    by_id = table.Column<Guid>(type: "uuid", nullable: false),
                    by = table.Column<string>(type: "text", nullable: false),
                    at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    set_aside_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    set_aside_by = table.Column<string>(type: "text", nullable: true),
                    set_aside_why = table.Column<string>(type: "text", nullable: true),
                    body = table.Column<string>(type: "jsonb", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_containment_agreements", x => x.id);
                    table.ForeignKey(
                        name: "FK_containment_agreements_orders_order_id",
                        column: x => x.order_id,
                        principalTable: "orders",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict
                    );
                }
            );

            migrationBuilder.CreateTable(
                name: "cure_readings",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    order_id = table.Column<Guid>(type: "uuid", nullable: false),
                    round = table.Column<int>(type: "integer", nullable: false),
                    by_id = table.Column<Guid>(type: "uuid", nullable: false),
                    by = table.Column<string>(type: "text", nullable: false),
                    at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    set_aside_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    set_aside_by = table.Column<string>(type: "text", nullable: true),
                    set_aside_why = table.Column<string>(type: "text", nullable: true),
                    body = table.Column<string>(type: "jsonb", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_cure_readings", x => x.id);
                    table.ForeignKey(
                        name: "FK_cure_readings_orders_order_id",
                        column: x => x.order_id,
                        principalTable: "orders",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict
                    );
                }
            );

            migrationBuilder.CreateTable(
                name: "debt_periods",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    order_id = table.Column<Guid>(type: "uuid", nullable: false),
                    round = table.Column<int>(type: "integer", nullable: false),
                    by_id = table.Column<Guid>(type: "uuid", nullable: false),
                    by = table.Column<string>(type: "text", nullable: false),
                    at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    set_aside_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    set_aside_by = table.Column<string>(type: "text", nullable: true),
                    set_aside_why = table.Column<string>(type: "text", nullable: true),
                    body = table.Column<string>(type: "jsonb", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_debt_periods", x => x.id);
                    table.ForeignKey(
                        name: "FK_debt_periods_orders_order_id",
                        column: x => x.order_id,
                        principalTable: "orders",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict
                    );
                }
            );

            migrationBuilder.CreateTable(
                name: "departure_acceptances",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    order_id = table.Column<Guid>(type: "uuid", nullable: false),
                    round = table.Column<int>(type: "integer", nullable: false),
                    by_id = table.Column<Guid>(type: "uuid", nullable: false),
                    by = table.Column<string>(type: "text", nullable: false),
                    at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    set_aside_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    set_aside_by = table.Column<string>(type: "text", nullable: true),
                    set_aside_why = table.Column<string>(type: "text", nullable: true),
                    body = table.Column<string>(type: "jsonb", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_departure_acceptances", x => x.id);
                    table.ForeignKey(
                        name: "FK_departure_acceptances_orders_order_id",
                        column: x => x.order_id,
                        principalTable: "orders",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict
                    );
                }
            );

            migrationBuilder.CreateTable(
                name: "designs",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    order_id = table.Column<Guid>(type: "uuid", nullable: false),
                    round = table.Column<int>(type: "integer", nullable: false),
                    by_id = table.Column<Guid>(type: "uuid", nullable: false),
                    by = table.Column<string>(type: "text", nullable: false),
                    at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    set_aside_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    set_aside_by = table.Column<string>(type: "text", nullable: true),
                    set_aside_why = table.Column<string>(type: "text", nullable: true),
                    body = table.Column<string>(type: "jsonb", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_designs", x => x.id);
                    table.ForeignKey(
                        name: "FK_designs_orders_order_id",
                        column: x => x.order_id,
                        principalTable: "orders",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict
                    );
                }
            );

            migrationBuilder.CreateTable(
                name: "deviations",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    order_id = table.Column<Guid>(type: "uuid", nullable: false),
                    round = table.Column<int>(type: "integer", nullable: false),
                    by_id = table.Column<Guid>(type: "uuid", nullable: false),
                    by = table.Column<string>(type: "text", nullable: false),
                    at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    set_aside_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    set_aside_by = table.Column<string>(type: "text", nullable: true),
                    set_aside_why = table.Column<string>(type: "text", nullable: true),
                    body = table.Column<string>(type: "jsonb", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_deviations", x => x.id);
                    table.ForeignKey(
                        name: "FK_deviations_orders_order_id",
                        column: x => x.order_id,
                        principalTable: "orders",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict
                    );
                }
            );

            migrationBuilder.CreateTable(
                name: "end_dates_moved_in",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    order_id = table.Column<Guid>(type: "uuid", nullable: false),
                    round = table.Column<int>(type: "integer", nullable: false),
                    by_id = table.Column<Guid>(type: "uuid", nullable: false),
                    by = table.Column<string>(type: "text", nullable: false),
                    at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    set_aside_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    set_aside_by = table.Column<string>(type: "text", nullable: true),
                    set_aside_why = table.Column<string>(type: "text", nullable: true),
                    body = table.Column<string>(type: "jsonb", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_end_dates_moved_in", x => x.id);
                    table.ForeignKey(
                        name: "FK_end_dates_moved_in_orders_order_id",
                        column: x => x.order_id,
                        principalTable: "orders",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict
                    );
                }
            );

            migrationBuilder.CreateTable(
                name: "exit_signatures",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    order_id = table.Column<Guid>(type: "uuid", nullable: false),
                    round = table.Column<int>(type: "integer", nullable: false),
                    by_id = table.Column<Guid>(type: "uuid", nullable: false),
                    by = table.Column<string>(type: "text", nullable: false),
                    at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    set_aside_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    set_aside_by = table.Column<string>(type: "text", nullable: true),
                    set_aside_why = table.Column<string>(type: "text", nullable: true),
                    body = table.Column<string>(type: "jsonb", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_exit_signatures", x => x.id);
                    table.ForeignKey(
                        name: "FK_exit_signatures_orders_order_id",
                        column: x => x.order_id,
                        principalTable: "orders",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict
                    );
                }
            );

            migrationBuilder.CreateTable(
                name: "exits",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    order_id = table.Column<Guid>(type: "uuid", nullable: false),
                    round = table.Column<int>(type: "integer", nullable: false),
                    by_id = table.Column<Guid>(type: "uuid", nullable: false),
                    by = table.Column<string>(type: "text", nullable: false),
                    at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    set_aside_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    set_aside_by = table.Column<string>(type: "text", nullable: true),
                    set_aside_why = table.Column<string>(type: "text", nullable: true),
                    body = table.Column<string>(type: "jsonb", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_exits", x => x.id);
                    table.ForeignKey(
                        name: "FK_exits_orders_order_id",
                        column: x => x.order_id,
                        principalTable: "orders",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict
                    );
                }
            );

            migrationBuilder.CreateTable(
                name: "extension_decisions",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    order_id = table.Column<Guid>(type: "uuid", nullable: false),
                    round = table.Column<int>(type: "integer", nullable: false),
                    by_id = table.Column<Guid>(type: "uuid", nullable: false),
                    by = table.Column<string>(type: "text", nullable: false),
                    at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    set_aside_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    set_aside_by = table.Column<string>(type: "text", nullable: true),
                    set_aside_why = table.Column<string>(type: "text", nullable: true),
                    body = table.Column<string>(type: "jsonb", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_extension_decisions", x => x.id);
                    table.ForeignKey(
                        name: "FK_extension_decisions_orders_order_id",
                        column: x => x.order_id,
                        principalTable: "orders",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict
                    );
                }
            );

            migrationBuilder.CreateTable(
                name: "extensions",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    order_id = table.Column<Guid>(type: "uuid", nullable: false),
                    round = table.Column<int>(type: "integer", nullable: false),
                    by_id = table.Column<Guid>(type: "uuid", nullable: false),
                    by = table.Column<string>(type: "text", nullable: false),
                    at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    set_aside_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    set_aside_by = table.Column<string>(type: "text", nullable: true),
                    set_aside_why = table.Column<string>(type: "text", nullable: true),
                    body = table.Column<string>(type: "jsonb", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_extensions", x => x.id);
                    table.ForeignKey(
                        name: "FK_extensions_orders_order_id",
                        column: x => x.order_id,
                        principalTable: "orders",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict
                    );
                }
            );

            migrationBuilder.CreateTable(
                name: "failure_modes",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    order_id = table.Column<Guid>(type: "uuid", nullable: false),
                    round = table.Column<int>(type: "integer", nullable: false),
                    by_id = table.Column<Guid>(type: "uuid", nullable: false),
                    by = table.Column<string>(type: "text", nullable: false),
                    at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    set_aside_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    set_aside_by = table.Column<string>(type: "text", nullable: true),
                    set_aside_why = table.Column<string>(type: "text", nullable: true),
                    body = table.Column<string>(type: "jsonb", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_failure_modes", x => x.id);
                    table.ForeignKey(
                        name: "FK_failure_modes_orders_order_id",
                        column: x => x.order_id,
                        principalTable: "orders",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict
                    );
                }
            );

            migrationBuilder.CreateTable(
                name: "failures",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    order_id = table.Column<Guid>(type: "uuid", nullable: false),
                    round = table.Column<int>(type: "integer", nullable: false),
                    by_id = table.Column<Guid>(type: "uuid", nullable: false),
                    by = table.Column<string>(type: "text", nullable: false),
                    at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    set_aside_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    set_aside_by = table.Column<string>(type: "text", nullable: true),
                    set_aside_why = table.Column<string>(type: "text", nullable: true),
                    body = table.Column<string>(type: "jsonb", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_failures", x => x.id);
                    table.ForeignKey(
                        name: "FK_failures_orders_order_id",
                        column: x => x.order_id,
                        principalTable: "orders",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict
                    );
                }
            );

            migrationBuilder.CreateTable(
                name: "first_look_acceptances",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    order_id = table.Column<Guid>(type: "uuid", nullable: false),
                    round = table.Column<int>(type: "integer", nullable: false),
                    by_id = table.Column<Guid>(type: "uuid", nullable: false),
                    by = table.Column<string>(type: "text", nullable: false),
                    at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    set_aside_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    set_aside_by = table.Column<string>(type: "text", nullable: true),
                    set_aside_why = table.Column<string>(type: "text", nullable: true),
                    body = table.Column<string>(type: "jsonb", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_first_look_acceptances", x => x.id);
                    table.ForeignKey(
                        name: "FK_first_look_acceptances_orders_order_id",
                        column: x => x.order_id,
                        principalTable: "orders",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict
                    );
                }
            );

            migrationBuilder.CreateTable(
                name: "hand_overs",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    order_id = table.Column<Guid>(type: "uuid", nullable: false),
                    round = table.Column<int>(type: "integer", nullable: false),
                    by_id = table.Column<Guid>(type: "uuid", nullable: false),
                    by = table.Column<string>(type: "text", nullable: false),
                    at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    set_aside_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    set_aside_by = table.Column<string>(type: "text", nullable: true),
                    set_aside_why = table.Column<string>(type: "text", nullable: true),
                    body = table.Column<string>(type: "jsonb", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_hand_overs", x => x.id);
                    table.ForeignKey(
                        name: "FK_hand_overs_orders_order_id",
                        column: x => x.order_id,
                        principalTable: "orders",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict
                    );
                }
            );

            migrationBuilder.CreateTable(
                name: "hold_point_releases",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    order_id = table.Column<Guid>(type: "uuid", nullable: false),
                    round = table.Column<int>(type: "integer", nullable: false),
                    by_id = table.Column<Guid>(type: "uuid", nullable: false),
                    by = table.Column<string>(type: "text", nullable: false),
                    at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    set_aside_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    set_aside_by = table.Column<string>(type: "text", nullable: true),
                    set_aside_why = table.Column<string>(type: "text", nullable: true),
                    body = table.Column<string>(type: "jsonb", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_hold_point_releases", x => x.id);
                    table.ForeignKey(
                        name: "FK_hold_point_releases_orders_order_id",
                        column: x => x.order_id,
                        principalTable: "orders",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict
                    );
                }
            );

            migrationBuilder.CreateTable(
                name: "journal",
                columns: table => new
                {
                    order_id = table.Column<Guid>(type: "uuid", nullable: false),
                    line = table.Column<int>(type: "integer", nullable: false),
                    at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    by_id = table.Column<Guid>(type: "uuid", nullable: false),
                    by = table.Column<string>(type: "text", nullable: false),
                    what = table.Column<string>(type: "text", nullable: false),
                    why = table.Column<string>(type: "text", nullable: true),
                    record_id = table.Column<Guid>(type: "uuid", nullable: true),
                    old = table.Column<string>(type: "text", nullable: true),
                    @new = table.Column<string>(name: "new", type: "text", nullable: false),
                    previous_hash = table.Column<string>(type: "text", nullable: false),
                    hash = table.Column<string>(type: "text", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_journal", x => new { x.order_id, x.line });
                    table.ForeignKey(
                        name: "fk_journal_orders_order_id",
                        column: x => x.order_id,
                        principalTable: "orders",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict
                    );
                }
            );

            migrationBuilder.CreateTable(
                name: "ladder_answers",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    order_id = table.Column<Guid>(type: "uuid", nullable: false),
                    round = table.Column<int>(type: "integer", nullable: false),
                    by_id = table.Column<Guid>(type: "uuid", nullable: false),
                    by = table.Column<string>(type: "text", nullable: false),
                    at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    set_aside_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    set_aside_by = table.Column<string>(type: "text", nullable: true),
                    set_aside_why = table.Column<string>(type: "text", nullable: true),
                    body = table.Column<string>(type: "jsonb", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_ladder_answers", x => x.id);
                    table.ForeignKey(
                        name: "FK_ladder_answers_orders_order_id",
                        column: x => x.order_id,
                        principalTable: "orders",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict
                    );
                }
            );

            migrationBuilder.CreateTable(
                name: "live_fit_consents",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    order_id = table.Column<Guid>(type: "uuid", nullable: false),
                    round = table.Column<int>(type: "integer", nullable: false),
                    by_id = table.Column<Guid>(type: "uuid", nullable: false),
                    by = table.Column<string>(type: "text", nullable: false),
                    at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    set_aside_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    set_aside_by = table.Column<string>(type: "text", nullable: true),
                    set_aside_why = table.Column<string>(type: "text", nullable: true),
                    body = table.Column<string>(type: "jsonb", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_live_fit_consents", x => x.id);
                    table.ForeignKey(
                        name: "FK_live_fit_consents_orders_order_id",
                        column: x => x.order_id,
                        principalTable: "orders",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict
                    );
                }
            );

            migrationBuilder.CreateTable(
                name: "made_safe",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    order_id = table.Column<Guid>(type: "uuid", nullable: false),
                    round = table.Column<int>(type: "integer", nullable: false),
                    by_id = table.Column<Guid>(type: "uuid", nullable: false),
                    by = table.Column<string>(type: "text", nullable: false),
                    at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    set_aside_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    set_aside_by = table.Column<string>(type: "text", nullable: true),
                    set_aside_why = table.Column<string>(type: "text", nullable: true),
                    body = table.Column<string>(type: "jsonb", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_made_safe", x => x.id);
                    table.ForeignKey(
                        name: "FK_made_safe_orders_order_id",
                        column: x => x.order_id,
                        principalTable: "orders",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict
                    );
                }
            );

            migrationBuilder.CreateTable(
                name: "material_issues",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    order_id = table.Column<Guid>(type: "uuid", nullable: false),
                    round = table.Column<int>(type: "integer", nullable: false),
                    by_id = table.Column<Guid>(type: "uuid", nullable: false),
                    by = table.Column<string>(type: "text", nullable: false),
                    at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    set_aside_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    set_aside_by = table.Column<string>(type: "text", nullable: true),
                    set_aside_why = table.Column<string>(type: "text", nullable: true),
                    body = table.Column<string>(type: "jsonb", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_material_issues", x => x.id);
                    table.ForeignKey(
                        name: "FK_material_issues_orders_order_id",
                        column: x => x.order_id,
                        principalTable: "orders",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict
                    );
                }
            );

            migrationBuilder.CreateTable(
                name: "material_returns",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    order_id = table.Column<Guid>(type: "uuid", nullable: false),
                    round = table.Column<int>(type: "integer", nullable: false),
                    by_id = table.Column<Guid>(type: "uuid", nullable: false),
                    by = table.Column<string>(type: "text", nullable: false),
                    at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    set_aside_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    set_aside_by = table.Column<string>(type: "text", nullable: true),
                    set_aside_why = table.Column<string>(type: "text", nullable: true),
                    body = table.Column<string>(type: "jsonb", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_material_returns", x => x.id);
                    table.ForeignKey(
                        name: "FK_material_returns_orders_order_id",
                        column: x => x.order_id,
                        principalTable: "orders",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict
                    );
                }
            );

            migrationBuilder.CreateTable(
                name: "material_uses",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    order_id = table.Column<Guid>(type: "uuid", nullable: false),
                    round = table.Column<int>(type: "integer", nullable: false),
                    by_id = table.Column<Guid>(type: "uuid", nullable: false),
                    by = table.Column<string>(type: "text", nullable: false),
                    at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    set_aside_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    set_aside_by = table.Column<string>(type: "text", nullable: true),
                    set_aside_why = table.Column<string>(type: "text", nullable: true),
                    body = table.Column<string>(type: "jsonb", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_material_uses", x => x.id);
                    table.ForeignKey(
                        name: "FK_material_uses_orders_order_id",
                        column: x => x.order_id,
                        principalTable: "orders",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict
                    );
                }
            );

            migrationBuilder.CreateTable(
                name: "mix_uses",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    order_id = table.Column<Guid>(type: "uuid", nullable: false),
                    round = table.Column<int>(type: "integer", nullable: false),
                    by_id = table.Column<Guid>(type: "uuid", nullable: false),
                    by = table.Column<string>(type: "text", nullable: false),
                    at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    set_aside_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    set_aside_by = table.Column<string>(type: "text", nullable: true),
                    set_aside_why = table.Column<string>(type: "text", nullable: true),
                    body = table.Column<string>(type: "jsonb", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_mix_uses", x => x.id);
                    table.ForeignKey(
                        name: "FK_mix_uses_orders_order_id",
                        column: x => x.order_id,
                        principalTable: "orders",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict
                    );
                }
            );

            migrationBuilder.CreateTable(
                name: "mixes",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    order_id = table.Column<Guid>(type: "uuid", nullable: false),
                    round = table.Column<int>(type: "integer", nullable: false),
                    by_id = table.Column<Guid>(type: "uuid", nullable: false),
                    by = table.Column<string>(type: "text", nullable: false),
                    at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    set_aside_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    set_aside_by = table.Column<string>(type: "text", nullable: true),
                    set_aside_why = table.Column<string>(type: "text", nullable: true),
                    body = table.Column<string>(type: "jsonb", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_mixes", x => x.id);
                    table.ForeignKey(
                        name: "FK_mixes_orders_order_id",
                        column: x => x.order_id,
                        principalTable: "orders",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict
                    );
                }
            );

            migrationBuilder.CreateTable(
                name: "owners",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    order_id = table.Column<Guid>(type: "uuid", nullable: false),
                    round = table.Column<int>(type: "integer", nullable: false),
                    by_id = table.Column<Guid>(type: "uuid", nullable: false),
                    by = table.Column<string>(type: "text", nullable: false),
                    at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    set_aside_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    set_aside_by = table.Column<string>(type: "text", nullable: true),
                    set_aside_why = table.Column<string>(type: "text", nullable: true),
                    body = table.Column<string>(type: "jsonb", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_owners", x => x.id);
                    table.ForeignKey(
                        name: "FK_owners_orders_order_id",
                        column: x => x.order_id,
                        principalTable: "orders",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict
                    );
                }
            );

            migrationBuilder.CreateTable(
                name: "permanent_fixes",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    order_id = table.Column<Guid>(type: "uuid", nullable: false),
                    round = table.Column<int>(type: "integer", nullable: false),
                    by_id = table.Column<Guid>(type: "uuid", nullable: false),
                    by = table.Column<string>(type: "text", nullable: false),
                    at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    set_aside_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    set_aside_by = table.Column<string>(type: "text", nullable: true),
                    set_aside_why = table.Column<string>(type: "text", nullable: true),
                    body = table.Column<string>(type: "jsonb", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_permanent_fixes", x => x.id);
                    table.ForeignKey(
                        name: "FK_permanent_fixes_orders_order_id",
                        column: x => x.order_id,
                        principalTable: "orders",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict
                    );
                }
            );

            migrationBuilder.CreateTable(
                name: "photos",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    order_id = table.Column<Guid>(type: "uuid", nullable: false),
                    round = table.Column<int>(type: "integer", nullable: false),
                    by_id = table.Column<Guid>(type: "uuid", nullable: false),
                    by = table.Column<string>(type: "text", nullable: false),
                    at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    set_aside_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    set_aside_by = table.Column<string>(type: "text", nullable: true),
                    set_aside_why = table.Column<string>(type: "text", nullable: true),
                    body = table.Column<string>(type: "jsonb", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_photos", x => x.id);
                    table.ForeignKey(
                        name: "FK_photos_orders_order_id",
                        column: x => x.order_id,
                        principalTable: "orders",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict
                    );
                }
            );

            migrationBuilder.CreateTable(
                name: "proof_witnesses",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    order_id = table.Column<Guid>(type: "uuid", nullable: false),
                    round = table.Column<int>(type: "integer", nullable: false),
                    by_id = table.Column<Guid>(type: "uuid", nullable: false),
                    by = table.Column<string>(type: "text", nullable: false),
                    at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    set_aside_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    set_aside_by = table.Column<string>(type: "text", nullable: true),
                    set_aside_why = table.Column<string>(type: "text", nullable: true),
                    body = table.Column<string>(type: "jsonb", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_proof_witnesses", x => x.id);
                    table.ForeignKey(
                        name: "FK_proof_witnesses_orders_order_id",
                        column: x => x.order_id,
                        principalTable: "orders",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict
                    );
                }
            );

            migrationBuilder.CreateTable(
                name: "proofs",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    order_id = table.Column<Guid>(type: "uuid", nullable: false),
                    round = table.Column<int>(type: "integer", nullable: false),
                    by_id = table.Column<Guid>(type: "uuid", nullable: false),
                    by = table.Column<string>(type: "text", nullable: false),
                    at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    set_aside_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    set_aside_by = table.Column<string>(type: "text", nullable: true),
                    set_aside_why = table.Column<string>(type: "text", nullable: true),
                    body = table.Column<string>(type: "jsonb", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_proofs", x => x.id);
                    table.ForeignKey(
                        name: "FK_proofs_orders_order_id",
                        column: x => x.order_id,
                        principalTable: "orders",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict
                    );
                }
            );

            migrationBuilder.CreateTable(
                name: "readiness",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    order_id = table.Column<Guid>(type: "uuid", nullable: false),
                    round = table.Column<int>(type: "integer", nullable: false),
                    by_id = table.Column<Guid>(type: "uuid", nullable: false),
                    by = table.Column<string>(type: "text", nullable: false),
                    at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    set_aside_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    set_aside_by = table.Column<string>(type: "text", nullable: true),
                    set_aside_why = table.Column<string>(type: "text", nullable: true),
                    body = table.Column<string>(type: "jsonb", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_readiness", x => x.id);
                    table.ForeignKey(
                        name: "FK_readiness_orders_order_id",
                        column: x => x.order_id,
                        principalTable: "orders",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict
                    );
                }
            );

            migrationBuilder.CreateTable(
                name: "removal_inspections",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    order_id = table.Column<Guid>(type: "uuid", nullable: false),
                    round = table.Column<int>(type: "integer", nullable: false),
                    by_id = table.Column<Guid>(type: "uuid", nullable: false),
                    by = table.Column<string>(type: "text", nullable: false),
                    at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    set_aside_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    set_aside_by = table.Column<string>(type: "text", nullable: true),
                    set_aside_why = table.Column<string>(type: "text", nullable: true),
                    body = table.Column<string>(type: "jsonb", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_removal_inspections", x => x.id);
                    table.ForeignKey(
                        name: "FK_removal_inspections_orders_order_id",
                        column: x => x.order_id,
                        principalTable: "orders",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict
                    );
                }
            );

            migrationBuilder.CreateTable(
                name: "removal_orders",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    order_id = table.Column<Guid>(type: "uuid", nullable: false),
                    round = table.Column<int>(type: "integer", nullable: false),
                    by_id = table.Column<Guid>(type: "uuid", nullable: false),
                    by = table.Column<string>(type: "text", nullable: false),
                    at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    set_aside_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    set_aside_by = table.Column<string>(type: "text", nullable: true),
                    set_aside_why = table.Column<string>(type: "text", nullable: true),
                    body = table.Column<string>(type: "jsonb", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_removal_orders", x => x.id);
                    table.ForeignKey(
                        name: "FK_removal_orders_orders_order_id",
                        column: x => x.order_id,
                        principalTable: "orders",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict
                    );
                }
            );

            migrationBuilder.CreateTable(
                name: "removals",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    order_id = table.Column<Guid>(type: "uuid", nullable: false),
                    round = table.Column<int>(type: "integer", nullable: false),
                    by_id = table.Column<Guid>(type: "uuid", nullable: false),
                    by = table.Column<string>(type: "text", nullable: false),
                    at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    set_aside_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    set_aside_by = table.Column<string>(type: "text", nullable: true),
                    set_aside_why = table.Column<string>(type: "text", nullable: true),
                    body = table.Column<string>(type: "jsonb", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_removals", x => x.id);
                    table.ForeignKey(
                        name: "FK_removals_orders_order_id",
                        column: x => x.order_id,
                        principalTable: "orders",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict
                    );
                }
            );

            migrationBuilder.CreateTable(
                name: "requests",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    order_id = table.Column<Guid>(type: "uuid", nullable: false),
                    round = table.Column<int>(type: "integer", nullable: false),
                    by_id = table.Column<Guid>(type: "uuid", nullable: false),
                    by = table.Column<string>(type: "text", nullable: false),
                    at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    set_aside_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    set_aside_by = table.Column<string>(type: "text", nullable: true),
                    set_aside_why = table.Column<string>(type: "text", nullable: true),
                    body = table.Column<string>(type: "jsonb", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_requests", x => x.id);
                    table.ForeignKey(
                        name: "FK_requests_orders_order_id",
                        column: x => x.order_id,
                        principalTable: "orders",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict
                    );
                }
            );

            migrationBuilder.CreateTable(
                name: "resumptions",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    order_id = table.Column<Guid>(type: "uuid", nullable: false),
                    round = table.Column<int>(type: "integer", nullable: false),
                    by_id = table.Column<Guid>(type: "uuid", nullable: false),
                    by = table.Column<string>(type: "text", nullable: false),
                    at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    set_aside_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    set_aside_by = table.Column<string>(type: "text", nullable: true),
                    set_aside_why = table.Column<string>(type: "text", nullable: true),
                    body = table.Column<string>(type: "jsonb", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_resumptions", x => x.id);
                    table.ForeignKey(
                        name: "FK_resumptions_orders_order_id",
                        column: x => x.order_id,
                        principalTable: "orders",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict
                    );
                }
            );

            migrationBuilder.CreateTable(
                name: "reviews",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    order_id = table.Column<Guid>(type: "uuid", nullable: false),
                    round = table.Column<int>(type: "integer", nullable: false),
                    by_id = table.Column<Guid>(type: "uuid", nullable: false),
                    by = table.Column<string>(type: "text", nullable: false),
                    at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    set_aside_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    set_aside_by = table.Column<string>(type: "text", nullable: true),
                    set_aside_why = table.Column<string>(type: "text", nullable: true),
                    body = table.Column<string>(type: "jsonb", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_reviews", x => x.id);
                    table.ForeignKey(
                        name: "FK_reviews_orders_order_id",
                        column: x => x.order_id,
                        principalTable: "orders",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict
                    );
                }
            );

            migrationBuilder.CreateTable(
                name: "service_returns",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    order_id = table.Column<Guid>(type: "uuid", nullable: false),
                    round = table.Column<int>(type: "integer", nullable: false),
                    by_id = table.Column<Guid>(type: "uuid", nullable: false),
                    by = table.Column<string>(type: "text", nullable: false),
                    at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    set_aside_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    set_aside_by = table.Column<string>(type: "text", nullable: true),
                    set_aside_why = table.Column<string>(type: "text", nullable: true),
                    body = table.Column<string>(type: "jsonb", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_service_returns", x => x.id);
                    table.ForeignKey(
                        name: "FK_service_returns_orders_order_id",
                        column: x => x.order_id,
                        principalTable: "orders",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict
                    );
                }
            );

            migrationBuilder.CreateTable(
                name: "stops",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    order_id = table.Column<Guid>(type: "uuid", nullable: false),
                    round = table.Column<int>(type: "integer", nullable: false),
                    by_id = table.Column<Guid>(type: "uuid", nullable: false),
                    by = table.Column<string>(type: "text", nullable: false),
                    at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    set_aside_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    set_aside_by = table.Column<string>(type: "text", nullable: true),
                    set_aside_why = table.Column<string>(type: "text", nullable: true),
                    body = table.Column<string>(type: "jsonb", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_stops", x => x.id);
                    table.ForeignKey(
                        name: "FK_stops_orders_order_id",
                        column: x => x.order_id,
                        principalTable: "orders",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict
                    );
                }
            );

            migrationBuilder.CreateTable(
                name: "substitutions",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    order_id = table.Column<Guid>(type: "uuid", nullable: false),
                    round = table.Column<int>(type: "integer", nullable: false),
                    by_id = table.Column<Guid>(type: "uuid", nullable: false),
                    by = table.Column<string>(type: "text", nullable: false),
                    at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    set_aside_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    set_aside_by = table.Column<string>(type: "text", nullable: true),
                    set_aside_why = table.Column<string>(type: "text", nullable: true),
                    body = table.Column<string>(type: "jsonb", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_substitutions", x => x.id);
                    table.ForeignKey(
                        name: "FK_substitutions_orders_order_id",
                        column: x => x.order_id,
                        principalTable: "orders",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict
                    );
                }
            );

            migrationBuilder.CreateTable(
                name: "test_waivers",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    order_id = table.Column<Guid>(type: "uuid", nullable: false),
                    round = table.Column<int>(type: "integer", nullable: false),
                    by_id = table.Column<Guid>(type: "uuid", nullable: false),
                    by = table.Column<string>(type: "text", nullable: false),
                    at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    set_aside_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    set_aside_by = table.Column<string>(type: "text", nullable: true),
                    set_aside_why = table.Column<string>(type: "text", nullable: true),
                    body = table.Column<string>(type: "jsonb", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_test_waivers", x => x.id);
                    table.ForeignKey(
                        name: "FK_test_waivers_orders_order_id",
                        column: x => x.order_id,
                        principalTable: "orders",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict
                    );
                }
            );

            migrationBuilder.CreateTable(
                name: "visit_countersignatures",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    order_id = table.Column<Guid>(type: "uuid", nullable: false),
                    round = table.Column<int>(type: "integer", nullable: false),
                    by_id = table.Column<Guid>(type: "uuid", nullable: false),
                    by = table.Column<string>(type: "text", nullable: false),
                    at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    set_aside_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    set_aside_by = table.Column<string>(type: "text", nullable: true),
                    set_aside_why = table.Column<string>(type: "text", nullable: true),
                    body = table.Column<string>(type: "jsonb", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_visit_countersignatures", x => x.id);
                    table.ForeignKey(
                        name: "FK_visit_countersignatures_orders_order_id",
                        column: x => x.order_id,
                        principalTable: "orders",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict
                    );
                }
            );

            migrationBuilder.CreateTable(
                name: "visits",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    order_id = table.Column<Guid>(type: "uuid", nullable: false),
                    round = table.Column<int>(type: "integer", nullable: false),
                    by_id = table.Column<Guid>(type: "uuid", nullable: false),
                    by = table.Column<string>(type: "text", nullable: false),
                    at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    set_aside_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    set_aside_by = table.Column<string>(type: "text", nullable: true),
                    set_aside_why = table.Column<string>(type: "text", nullable: true),
                    body = table.Column<string>(type: "jsonb", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_visits", x => x.id);
                    table.ForeignKey(
                        name: "FK_visits_orders_order_id",
                        column: x => x.order_id,
                        principalTable: "orders",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict
                    );
                }
            );

            migrationBuilder.CreateTable(
                name: "shutdown_moves",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    shutdown_id = table.Column<Guid>(type: "uuid", nullable: false),
                    from = table.Column<DateOnly>(type: "date", nullable: false),
                    to = table.Column<DateOnly>(type: "date", nullable: false),
                    why = table.Column<string>(type: "text", nullable: false),
                    by = table.Column<string>(type: "text", nullable: false),
                    by_id = table.Column<Guid>(type: "uuid", nullable: false),
                    at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_shutdown_moves", x => x.id);
                    table.ForeignKey(
                        name: "fk_shutdown_moves_shutdowns_shutdown_id",
                        column: x => x.shutdown_id,
                        principalTable: "shutdowns",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict
                    );
                }
            );

            migrationBuilder.CreateTable(
                name: "batch_judgements",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    batch_id = table.Column<Guid>(type: "uuid", nullable: false),
                    standing = table.Column<string>(type: "text", nullable: false),
                    why = table.Column<string>(type: "text", nullable: false),
                    by_id = table.Column<Guid>(type: "uuid", nullable: false),
                    by = table.Column<string>(type: "text", nullable: false),
                    at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_batch_judgements", x => x.id);
                    table.ForeignKey(
                        name: "fk_batch_judgements_batches_batch_id",
                        column: x => x.batch_id,
                        principalTable: "batches",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict
                    );
                }
            );

            migrationBuilder.CreateTable(
                name: "stock_moves",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    batch_id = table.Column<Guid>(type: "uuid", nullable: false),
                    quantity = table.Column<decimal>(type: "numeric(14,3)", precision: 14, scale: 3, nullable: false),
                    from = table.Column<string>(type: "text", nullable: false),
                    from_bin = table.Column<string>(type: "text", nullable: true),
                    to = table.Column<string>(type: "text", nullable: false),
                    to_bin = table.Column<string>(type: "text", nullable: true),
                    order_id = table.Column<Guid>(type: "uuid", nullable: true),
                    why = table.Column<string>(type: "text", nullable: false),
                    by_id = table.Column<Guid>(type: "uuid", nullable: false),
                    by = table.Column<string>(type: "text", nullable: false),
                    at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_stock_moves", x => x.id);
                    table.ForeignKey(
                        name: "fk_stock_moves_batches_batch_id",
                        column: x => x.batch_id,
                        principalTable: "batches",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict
                    );
                    table.ForeignKey(
                        name: "fk_stock_moves_orders_order_id",
                        column: x => x.order_id,
                        principalTable: "orders",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict
                    );
                }
            );

            migrationBuilder.CreateIndex(name: "IX_acceptances_order_id", table: "acceptances", column: "order_id");

            migrationBuilder.CreateIndex(name: "IX_approvals_order_id", table: "approvals", column: "order_id");

            migrationBuilder.CreateIndex(name: "IX_assessments_order_id", table: "assessments", column: "order_id");

            migrationBuilder.CreateIndex(
                name: "ix_batch_judgements_batch_id",
                table: "batch_judgements",
                column: "batch_id"
            );

            migrationBuilder.CreateIndex(
                name: "ix_batches_item_id_number",
                table: "batches",
                columns: new[] { "item_id", "number" },
                unique: true
            );

            migrationBuilder.CreateIndex(
                name: "ix_bins_site_id_code",
                table: "bins",
                columns: new[] { "site_id", "code" },
                unique: true
            );

            migrationBuilder.CreateIndex(name: "IX_choices_order_id", table: "choices", column: "order_id");

            migrationBuilder.CreateIndex(
                name: "IX_climate_readings_order_id",
                table: "climate_readings",
                column: "order_id"
            );

            migrationBuilder.CreateIndex(
                name: "IX_close_out_countersignatures_order_id",
                table: "close_out_countersignatures",
                column: "order_id"
            );

            migrationBuilder.CreateIndex(name: "IX_close_outs_order_id", table: "close_outs", column: "order_id");

            migrationBuilder.CreateIndex(
                name: "IX_consent_confirmations_order_id",
                table: "consent_confirmations",
                column: "order_id"
            );

            migrationBuilder.CreateIndex(name: "IX_consents_order_id", table: "consents", column: "order_id");

            migrationBuilder.CreateIndex(
                name: "IX_containment_agreements_order_id",
                table: "containment_agreements",
                column: "order_id"
            );

            migrationBuilder.CreateIndex(name: "IX_cure_readings_order_id", table: "cure_readings", column: "order_id");

            migrationBuilder.CreateIndex(name: "IX_debt_periods_order_id", table: "debt_periods", column: "order_id");

            migrationBuilder.CreateIndex(
                name: "IX_departure_acceptances_order_id",
                table: "departure_acceptances",
                column: "order_id"
            );

            migrationBuilder.CreateIndex(name: "IX_designs_order_id", table: "designs", column: "order_id");

            migrationBuilder.CreateIndex(name: "IX_deviations_order_id", table: "deviations", column: "order_id");

            migrationBuilder.CreateIndex(
                name: "ix_emergency_methods_site_id",
                table: "emergency_methods",
                column: "site_id"
            );

            migrationBuilder.CreateIndex(
                name: "IX_end_dates_moved_in_order_id",
                table: "end_dates_moved_in",
                column: "order_id"
            );

            migrationBuilder.CreateIndex(
                name: "IX_exit_signatures_order_id",
                table: "exit_signatures",
                column: "order_id"
            );

            migrationBuilder.CreateIndex(name: "IX_exits_order_id", table: "exits", column: "order_id");

            migrationBuilder.CreateIndex(
                name: "IX_extension_decisions_order_id",
                table: "extension_decisions",
                column: "order_id"
            );

            migrationBuilder.CreateIndex(name: "IX_extensions_order_id", table: "extensions", column: "order_id");

            migrationBuilder.CreateIndex(name: "IX_failure_modes_order_id", table: "failure_modes", column: "order_id");

            migrationBuilder.CreateIndex(name: "IX_failures_order_id", table: "failures", column: "order_id");

            migrationBuilder.CreateIndex(
                name: "IX_first_look_acceptances_order_id",
                table: "first_look_acceptances",
                column: "order_id"
            );

            migrationBuilder.CreateIndex(name: "IX_hand_overs_order_id", table: "hand_overs", column: "order_id");

            migrationBuilder.CreateIndex(
                name: "IX_hold_point_releases_order_id",
                table: "hold_point_releases",
                column: "order_id"
            );

            migrationBuilder.CreateIndex(
                name: "ix_instruments_site_id_serial",
                table: "instruments",
                columns: new[] { "site_id", "serial" },
                unique: true
            );

            migrationBuilder
                .CreateIndex(name: "ix_journal_at", table: "journal", column: "at")
                .Annotation("Npgsql:IndexMethod", "brin");

            migrationBuilder.CreateIndex(
                name: "IX_ladder_answers_order_id",
                table: "ladder_answers",
                column: "order_id"
            );

            migrationBuilder.CreateIndex(
                name: "ix_lines_site_id_number",
                table: "lines",
                columns: new[] { "site_id", "number" },
                unique: true
            );

            migrationBuilder.CreateIndex(
                name: "IX_live_fit_consents_order_id",
                table: "live_fit_consents",
                column: "order_id"
            );

            migrationBuilder.CreateIndex(name: "IX_made_safe_order_id", table: "made_safe", column: "order_id");

            migrationBuilder.CreateIndex(
                name: "IX_material_issues_order_id",
                table: "material_issues",
                column: "order_id"
            );

            migrationBuilder.CreateIndex(
                name: "IX_material_returns_order_id",
                table: "material_returns",
                column: "order_id"
            );

            migrationBuilder.CreateIndex(name: "IX_material_uses_order_id", table: "material_uses", column: "order_id");

            migrationBuilder.CreateIndex(name: "IX_mix_uses_order_id", table: "mix_uses", column: "order_id");

            migrationBuilder.CreateIndex(name: "IX_mixes_order_id", table: "mixes", column: "order_id");

            migrationBuilder.CreateIndex(name: "ix_orders_line_id", table: "orders", column: "line_id");

            migrationBuilder.CreateIndex(name: "ix_orders_number", table: "orders", column: "number", unique: true);

            migrationBuilder.CreateIndex(name: "ix_orders_site_id", table: "orders", column: "site_id");

            migrationBuilder.CreateIndex(name: "IX_owners_order_id", table: "owners", column: "order_id");

            migrationBuilder.CreateIndex(name: "EmailIndex", table: "people", column: "normalized_email");

            migrationBuilder.CreateIndex(
                name: "UserNameIndex",
                table: "people",
                column: "normalized_user_name",
                unique: true
            );

            migrationBuilder.CreateIndex(
                name: "IX_permanent_fixes_order_id",
                table: "permanent_fixes",
                column: "order_id"
            );

            migrationBuilder.CreateIndex(name: "ix_person_claims_user_id", table: "person_claims", column: "user_id");

            migrationBuilder.CreateIndex(name: "ix_person_logins_user_id", table: "person_logins", column: "user_id");

            migrationBuilder.CreateIndex(name: "IX_photos_order_id", table: "photos", column: "order_id");

            migrationBuilder.CreateIndex(
                name: "IX_proof_witnesses_order_id",
                table: "proof_witnesses",
                column: "order_id"
            );

            migrationBuilder.CreateIndex(name: "IX_proofs_order_id", table: "proofs", column: "order_id");

            migrationBuilder.CreateIndex(name: "IX_readiness_order_id", table: "readiness", column: "order_id");

            migrationBuilder.CreateIndex(
                name: "IX_removal_inspections_order_id",
                table: "removal_inspections",
                column: "order_id"
            );

            migrationBuilder.CreateIndex(
                name: "IX_removal_orders_order_id",
                table: "removal_orders",
                column: "order_id"
            );

            migrationBuilder.CreateIndex(name: "IX_removals_order_id", table: "removals", column: "order_id");

            migrationBuilder.CreateIndex(name: "IX_requests_order_id", table: "requests", column: "order_id");

            migrationBuilder.CreateIndex(name: "IX_resumptions_order_id", table: "resumptions", column: "order_id");

            migrationBuilder.CreateIndex(name: "IX_reviews_order_id", table: "reviews", column: "order_id");

            migrationBuilder.CreateIndex(
                name: "IX_service_returns_order_id",
                table: "service_returns",
                column: "order_id"
            );

            migrationBuilder.CreateIndex(name: "ix_sessions_id", table: "sessions", column: "id", unique: true);

            migrationBuilder.CreateIndex(name: "ix_sessions_person_id", table: "sessions", column: "person_id");

            migrationBuilder.CreateIndex(
                name: "ix_shutdown_moves_shutdown_id",
                table: "shutdown_moves",
                column: "shutdown_id"
            );

            migrationBuilder.CreateIndex(
                name: "ix_shutdowns_site_id_name",
                table: "shutdowns",
                columns: new[] { "site_id", "name" },
                unique: true
            );

            migrationBuilder.CreateIndex(
                name: "ix_sites_short_name",
                table: "sites",
                column: "short_name",
                unique: true
            );

            migrationBuilder.CreateIndex(
                name: "ix_stock_items_site_id_code",
                table: "stock_items",
                columns: new[] { "site_id", "code" },
                unique: true
            );

            migrationBuilder.CreateIndex(name: "ix_stock_moves_batch_id", table: "stock_moves", column: "batch_id");

            migrationBuilder.CreateIndex(name: "ix_stock_moves_order_id", table: "stock_moves", column: "order_id");

            migrationBuilder.CreateIndex(name: "IX_stops_order_id", table: "stops", column: "order_id");

            migrationBuilder.CreateIndex(name: "IX_substitutions_order_id", table: "substitutions", column: "order_id");

            migrationBuilder.CreateIndex(name: "IX_test_waivers_order_id", table: "test_waivers", column: "order_id");

            migrationBuilder.CreateIndex(
                name: "IX_visit_countersignatures_order_id",
                table: "visit_countersignatures",
                column: "order_id"
            );

            migrationBuilder.CreateIndex(name: "IX_visits_order_id", table: "visits", column: "order_id");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(name: "acceptances");

            migrationBuilder.DropTable(name: "approvals");

            migrationBuilder.DropTable(name: "assessments");

            migrationBuilder.DropTable(name: "batch_judgements");

            migrationBuilder.DropTable(name: "bins");

            migrationBuilder.DropTable(name: "changes");

            migrationBuilder.DropTable(name: "choices");

            migrationBuilder.DropTable(name: "climate_readings");

            migrationBuilder.DropTable(name: "close_out_countersignatures");

            migrationBuilder.DropTable(name: "close_outs");

            migrationBuilder.DropTable(name: "consent_confirmations");

            migrationBuilder.DropTable(name: "consents");

            migrationBuilder.DropTable(name: "containment_agreements");

            migrationBuilder.DropTable(name: "cure_readings");

            migrationBuilder.DropTable(name: "data_protection_keys");

            migrationBuilder.DropTable(name: "debt_periods");

            migrationBuilder.DropTable(name: "departure_acceptances");

            migrationBuilder.DropTable(name: "designs");

            migrationBuilder.DropTable(name: "deviations");

            migrationBuilder.DropTable(name: "emergency_methods");

            migrationBuilder.DropTable(name: "end_dates_moved_in");

            migrationBuilder.DropTable(name: "exit_signatures");

            migrationBuilder.DropTable(name: "exits");

            migrationBuilder.DropTable(name: "extension_decisions");

            migrationBuilder.DropTable(name: "extensions");

            migrationBuilder.DropTable(name: "failure_modes");

            migrationBuilder.DropTable(name: "failures");

            migrationBuilder.DropTable(name: "first_administrators");

            migrationBuilder.DropTable(name: "first_look_acceptances");

            migrationBuilder.DropTable(name: "hand_overs");

            migrationBuilder.DropTable(name: "hold_point_releases");

            migrationBuilder.DropTable(name: "instruments");

            migrationBuilder.DropTable(name: "journal");

            migrationBuilder.DropTable(name: "kept_answers");

            migrationBuilder.DropTable(name: "ladder_answers");

            migrationBuilder.DropTable(name: "live_fit_consents");

            migrationBuilder.DropTable(name: "made_safe");

            migrationBuilder.DropTable(name: "material_issues");

            migrationBuilder.DropTable(name: "material_returns");

            migrationBuilder.DropTable(name: "material_uses");

            migrationBuilder.DropTable(name: "mix_uses");

            migrationBuilder.DropTable(name: "mixes");

            migrationBuilder.DropTable(name: "owners");

            migrationBuilder.DropTable(name: "permanent_fixes");

            migrationBuilder.DropTable(name: "person_claims");

            migrationBuilder.DropTable(name: "person_logins");

            migrationBuilder.DropTable(name: "person_tokens");

            migrationBuilder.DropTable(name: "photo_blocks");

            migrationBuilder.DropTable(name: "photo_thumbnails");

            migrationBuilder.DropTable(name: "photos");

            migrationBuilder.DropTable(name: "proof_witnesses");

            migrationBuilder.DropTable(name: "proofs");

            migrationBuilder.DropTable(name: "readiness");

            migrationBuilder.DropTable(name: "removal_inspections");

            migrationBuilder.DropTable(name: "removal_orders");

            migrationBuilder.DropTable(name: "removals");

            migrationBuilder.DropTable(name: "requests");

            migrationBuilder.DropTable(name: "resumptions");

            migrationBuilder.DropTable(name: "reviews");

            migrationBuilder.DropTable(name: "service_returns");

            migrationBuilder.DropTable(name: "sessions");

            migrationBuilder.DropTable(name: "shutdown_moves");

            migrationBuilder.DropTable(name: "stock_counts");

            migrationBuilder.DropTable(name: "stock_moves");

            migrationBuilder.DropTable(name: "stops");

            migrationBuilder.DropTable(name: "substitutions");

            migrationBuilder.DropTable(name: "test_waivers");

            migrationBuilder.DropTable(name: "visit_countersignatures");

            migrationBuilder.DropTable(name: "visits");

            migrationBuilder.DropTable(name: "people");

            migrationBuilder.DropTable(name: "shutdowns");

            migrationBuilder.DropTable(name: "batches");

            migrationBuilder.DropTable(name: "orders");

            migrationBuilder.DropTable(name: "stock_items");

            migrationBuilder.DropTable(name: "lines");

            migrationBuilder.DropTable(name: "sites");
        }
    }
}
