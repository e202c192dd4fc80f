using System.ComponentModel.DataAnnotations;
using System.Globalization;
using System.Reflection;
using System.Text;
using System.Text.Json;
using CsvHelper;
using CsvHelper.Configuration;
using RepairOrders.Api.Sites;
using RepairOrders.Api.Wire;
using RepairOrders.Contract;

namespace RepairOrders.Api.Lines;

/// <summary>A CSV file of lines: its columns are the fields of a line, and what each takes is what the field takes.</summary>
internal sealed class LineFile
{
    public const int MostRows = 20_000;
    private const string NumberColumn = "number";

    private static readonly ConstructorInfo Make = typeof(LineDetails).GetConstructors()[0];
    private static readonly IReadOnlyList<Column> Columns = [.. Make.GetParameters().Select(p => new Column(p))];

    // A problem with one field is only told when the fields it is judged by could be read.
    private static readonly Dictionary<string, string[]> LeansOn = new()
    {
        ["section"] = ["area"],
        ["dn"] = ["nps"],
        ["outsideDiameter"] = ["nps", "dn"],
        ["nominalWall"] = ["nps", "dn", "outsideDiameter"],
        ["operatingPressure"] = ["designPressure"],
        ["operatingTemperature"] = ["designTemperature"],
        ["serviceCategory"] = ["flammable", "toxic", "designPressure", "designTemperature"],
        ["autoIgnition"] = ["flammable"],
    };

    private readonly List<ImportProblem> problems = [];
    private readonly List<(int Row, string Number, LineDetails Details)> lines = [];

    public int Rows { get; private set; }
    public IReadOnlyList<ImportProblem> Problems => [.. problems.OrderBy(p => p.Row)];
    public IEnumerable<(string Number, LineDetails Details)> Lines => lines.Select(l => (l.Number, l.Details));

    /// <summary>Areas and sections the file names that the site has not.</summary>
    public IReadOnlyList<(string Area, string Section)> NewSections { get; private set; } = [];

    /// <summary>The headings, and an example that is passed over when the file is read.</summary>
    public static string Template =>
        string.Join(',', Columns.Select(c => c.Name).Prepend(NumberColumn))
        + "\r\n"
        + "# CW-150-3104,Pump house 2,CW-N,6,150,168.3 mm,7.11 mm,ASTM A106 B,cooling water,liquid,2,d,4,no,no,,10 bar,50 °C,6 bar,18 °C,no,no,no,2004\r\n";

    public static async Task<LineFile> Read(
        Stream content,
        Site site,
        IReadOnlySet<string> known,
        bool newSections,
        int year
    )
    {
        var file = new LineFile();
        try
        {
            using var text = new StreamReader(
                content,
                new UTF8Encoding(false, throwOnInvalidBytes: true),
                leaveOpen: true
            );
            using var csv = new CsvReader(text, Format(file));
            if (await csv.ReadAsync() && csv.ReadHeader() && file.HasColumns(csv))
                while (await csv.ReadAsync())
                    file.Take(csv, known);
            else if (file.problems.Count == 0)
                file.problems.Add(new(1, null, "The file is empty; its first row is the heading of the template."));
        }
        catch (DecoderFallbackException)
        {
            throw new MalformedAsk("body", "The file is not UTF-8. Save it as CSV UTF-8 and send it again.");
        }
        catch (CsvHelperException e)
        {
            file.problems.Add(
                new(
                    e.Context?.Parser?.RawRow ?? 1,
                    null,
                    "The row cannot be read as CSV: look for a quotation mark that is not closed."
                )
            );
        }
        file.NewSections = file.Unknown(site);
        file.Judge(newSections ? With(site, file.NewSections) : site, year);
        return file;
    }

    /// <summary>The site with more areas and sections.</summary>
    public static Site With(Site site, IReadOnlyList<(string Area, string Section)> more) =>
        new()
        {
            ShortName = site.ShortName,
            Areas =
            [
                .. site.Areas.Select(a => new Area
                {
                    Name = a.Name,
                    Supervisor = a.Supervisor,
                    Sections = [.. a.Sections, .. more.Where(m => m.Area == a.Name).Select(m => m.Section)],
                }),
                .. more.Where(m => site.Areas.All(a => a.Name != m.Area))
                    .GroupBy(m => m.Area, m => m.Section)
                    .Select(g => new Area { Name = g.Key, Sections = [.. g] }),
            ],
        };

    private static CsvConfiguration Format(LineFile file) =>
        new(CultureInfo.InvariantCulture)
        {
            DetectDelimiter = true,
            DetectDelimiterValues = [",", ";", "\t"],
            AllowComments = true,
            TrimOptions = TrimOptions.Trim,
            PrepareHeaderForMatch = heading => heading.Header.ToLowerInvariant(),
            MissingFieldFound = null,
            BadDataFound = bad =>
                file.problems.Add(
                    new(
                        bad.Context.Parser?.RawRow ?? 1,
                        null,
                        "A cell cannot be read as CSV: look for a stray quotation mark."
                    )
                ),
        };

    private bool HasColumns(CsvReader csv)
    {
        var given = csv.HeaderRecord ?? [];
        var all = Columns.Select(c => c.Name).Prepend(NumberColumn).ToList();
        foreach (var heading in given.Where(h => !all.Contains(h, StringComparer.OrdinalIgnoreCase)))
            problems.Add(
                new(1, heading, $"\"{heading}\" is no column of this file; allowed are {string.Join(", ", all)}.")
            );
        foreach (var twice in given.GroupBy(h => h, StringComparer.OrdinalIgnoreCase).Where(g => g.Count() > 1))
            problems.Add(new(1, twice.Key, $"The column {twice.Key} is there twice."));
        foreach (var lacking in Columns.Where(c => c.Demanded).Select(c => c.Name).Prepend(NumberColumn))
            if (!given.Contains(lacking, StringComparer.OrdinalIgnoreCase))
                problems.Add(new(1, lacking, $"The column {lacking} is missing."));
        return problems.Count == 0;
    }

    private void Take(CsvReader csv, IReadOnlySet<string> known)
    {
        if (++Rows > MostRows)
            throw new MalformedAsk("body", $"The file has more than {MostRows} rows, the most that is taken at once.");
        var row = csv.Parser.RawRow;
        var number = csv.GetField(NumberColumn) ?? "";
        if (number.Length is 0 or > 60)
            problems.Add(new(row, NumberColumn, "number is missing or longer than 60 characters."));
        else if (known.Contains(number))
            problems.Add(new(row, NumberColumn, $"number is {number}, which is in the line list already."));
        else if (lines.FirstOrDefault(l => l.Number == number) is { Row: > 0 } earlier)
            problems.Add(new(row, NumberColumn, $"number is {number}, which row {earlier.Row} has already."));
        var values = new object?[Columns.Count];
        for (var i = 0; i < values.Length; i++)
        {
            values[i] = Columns[i].Read(csv.GetField(Columns[i].Name) ?? "", out var problem);
            if (problem is not null)
                problems.Add(new(row, Columns[i].Name, problem));
        }
        lines.Add((row, number, (LineDetails)Make.Invoke(values)));
    }

    private void Judge(Site site, int year)
    {
        var unread = problems.Where(p => p.Column is not null).Select(p => (p.Row, p.Column!)).ToHashSet();
        foreach (var (row, _, details) in lines)
        foreach (var (field, sentence) in LineRules.Problems(details, site, year))
            if (LeansOn.GetValueOrDefault(field, []).Append(field).All(f => !unread.Contains((row, f))))
                problems.Add(new(row, field, sentence));
    }

    private List<(string Area, string Section)> Unknown(Site site) =>
        [
            .. Lines
                .Select(l => (l.Details.Area, l.Details.Section))
                .Where(p => p.Area.Length > 0 && p.Section.Length > 0)
                .Distinct()
                .Where(p => !site.Areas.Any(a => a.Name == p.Area && a.Sections.Contains(p.Section)))
                .Order(),
        ];

    /// <summary>One field of a line as a column: its annotations say what a cell may be.</summary>
    private sealed class Column
    {
        private readonly Type type;
        private readonly PropertyInfo property;

        public Column(ParameterInfo parameter)
        {
            property = typeof(LineDetails).GetProperty(parameter.Name!)!;
            type = Nullable.GetUnderlyingType(parameter.ParameterType) ?? parameter.ParameterType;
            Name = JsonNamingPolicy.CamelCase.ConvertName(property.Name);
            Demanded =
                property.GetCustomAttribute<RequiredAttribute>() is not null
                || (parameter.ParameterType.IsValueType && type == parameter.ParameterType);
        }

        public string Name { get; }
        public bool Demanded { get; }

        /// <summary>The cell's value; where it cannot be read, the problem and something harmless in its place.</summary>
        public object? Read(string cell, out string? problem)
        {
            problem = null;
            if (cell.Length == 0)
            {
                problem = Demanded ? $"{Name} is missing." : null;
                return Harmless();
            }
            var (value, allowed) = Value(cell);
            if (value is not null)
                return value;
            problem = $"{Name} is \"{cell}\"; allowed is {allowed}.";
            return Harmless();
        }

        private (object? Value, string Allowed) Value(string cell)
        {
            if (type == typeof(string))
            {
                var most = property.GetCustomAttribute<StringLengthAttribute>()!.MaximumLength;
                return (cell.Length <= most ? cell : null, $"text of at most {most} characters");
            }
            if (type == typeof(Measure))
            {
                var field = property.GetCustomAttribute<MeasuredInAttribute>()!;
                var read =
                    Measure.TryRead(cell, field.Unit, out var measure)
                    && measure!.Value >= field.Least
                    && measure.Value <= field.Greatest;
                return (read ? measure : null, $"{field.Allowed}, with or without the unit");
            }
            if (type == typeof(int))
            {
                var range = property.GetCustomAttribute<RangeAttribute>()!;
                var read = int.TryParse(cell, NumberStyles.Integer, CultureInfo.InvariantCulture, out var number);
                return (
                    read && range.IsValid(number) ? number : null,
                    $"a whole number from {range.Minimum} to {range.Maximum}"
                );
            }
            if (type == typeof(bool))
                return (
                    cell.ToLowerInvariant() switch
                    {
                        "yes" or "true" => true,
                        "no" or "false" => false,
                        _ => (object?)null,
                    },
                    "yes or no"
                );
            var words = Enum.GetValues(type)
                .Cast<object>()
                .ToDictionary(v => JsonNamingPolicy.CamelCase.ConvertName($"{v}"));
            return (
                words.FirstOrDefault(w => string.Equals(w.Key, cell, StringComparison.OrdinalIgnoreCase)).Value,
                $"one of {string.Join(", ", words.Keys)}"
            );
        }

        private object? Harmless() =>
            type == typeof(string) && Demanded ? ""
            : type == typeof(Measure) && Demanded ? new Measure(0, "", "")
            : Demanded ? Activator.CreateInstance(type)
            : null;
    }
}
