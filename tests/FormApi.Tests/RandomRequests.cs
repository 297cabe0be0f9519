using System.Text.Json.Nodes;

namespace FormApi.Tests;

/// <summary>Requests for forms of every curve, material, finish and brake, in mm and inches; about a third are deliberately bad.</summary>
/// <param name="seed">The seed: the same one draws the same requests.</param>
/// <param name="materials">Ids of materials, each with its gauge system or null.</param>
public sealed class RandomRequests(int seed, IReadOnlyList<(string Id, string? GaugeSystem)> materials)
{
    private static readonly string[] FormMaterials = ["steel-cr-cs", "steel-cr-cs", "steel-hrpo", "al-5052-h32", "al-6061-t6", "ss-304"];

    private readonly Random _random = new(seed);
    private bool _isInch;
    private bool _isBad;

    public JsonObject Next()
    {
        _isInch = Chance(0.5);
        _isBad = Chance(1.0 / 3);
        var byGauge = _isInch && Chance(0.4);
        var request = new JsonObject
        {
            ["units"] = _isInch ? "in" : "mm",
            ["panel"] = Panel(byGauge),
            ["form"] = Form(byGauge),
            ["brake"] = Brake(),
        };
        return request;
    }

    private JsonObject Panel(bool byGauge)
    {
        var (id, system) = Pick(materials);
        var panel = new JsonObject
        {
            ["material"] = new JsonObject { ["id"] = id },
            ["width"] = _isBad ? Length(Log(100, 3500)) : Length(Log(150, 1100)),
            ["leadIn"] = Length(Even(50, 200)),
            ["leadOut"] = _isBad ? Length(Even(5, 500)) : Length(Even(60, 300)),
            ["curve"] = Curve(inChain: false),
            ["finish"] = Pick(["satin", "satin", "gloss", "hidden"]),
            ["grain"] = Pick(["across", "across", "unknown", "along"]),
        };
        if (byGauge && system is not null)
            panel["gauge"] = Pick([10, 12, 14, 16, 18, 20, 22]);
        else
            panel["thickness"] = Fine(_isBad ? Log(0.4, 5) : Log(0.5, 2.5));
        if (Chance(0.25))
            panel["lever"] = Length(Even(10, 250));
        if (Chance(0.15))
            panel["allowedRipple"] = Fine(Log(0.02, 0.5));
        if (Chance(0.2))
            panel["clamp"] = new JsonObject { ["gap"] = Length(Even(5, 60)), ["height"] = Length(Even(10, 120)) };
        if (Chance(0.15))
            panel["mirrored"] = true;
        return panel;
    }

    private JsonObject Form(bool byGauge)
    {
        var id = Pick(FormMaterials);
        var thickness = Even(1.2, 3);
        var form = new JsonObject
        {
            ["material"] = new JsonObject { ["id"] = id },
            ["foldRadius"] = _isBad ? Fine(Log(0.3, 15)) : Fine(thickness * Even(0.8, 2)),
            ["leadIn"] = _isBad ? Length(Even(0, 120)) : Length(Even(30, 120)),
            ["leadOut"] = _isBad ? Length(Even(0, 300)) : Length(Even(30, 150)),
            ["grain"] = Pick(["across", "unknown"]),
        };
        if (byGauge && materials.Any(material => material.Id == id && material.GaugeSystem is not null))
            form["gauge"] = Pick([10, 12, 14, 16, 18]);
        else
            form["thickness"] = Fine(thickness);
        if (Stepping() is { Count: > 0 } stepping)
            form["stepping"] = stepping;
        if (_isBad && Chance(0.2))
            form["width"] = Length(Even(100, 3500));
        return form;
    }

    private JsonObject Stepping()
    {
        var stepping = new JsonObject();
        if (Chance(0.08))
            stepping["angle"] = Math.Round(Even(3, 15), 1);
        else if (Chance(0.05))
            stepping["spacing"] = Length(Even(8, 40));
        else if (Chance(0.5))
            stepping["rule"] = Pick(["equal-angle", "equal-spacing", "fewest-folds"]);
        if (Chance(0.4))
            stepping["ends"] = Pick(["half", "full"]);
        if (Chance(0.3) && stepping["angle"] is null && stepping["spacing"] is null)
            stepping["folds"] = _random.Next(3, 31);
        if (Chance(0.2))
            stepping["maxFacet"] = Length(Even(8, 60));
        return stepping;
    }

    private JsonObject Brake()
    {
        var brake = new JsonObject
        {
            ["length"] = _isBad ? Length(Even(300, 3000)) : Length(Pick([1250, 1250, 2500, 3000])),
            ["kind"] = Pick(["leaf", "press"]),
        };
        if (Chance(0.5))
            brake["minFacet"] = _isBad ? Length(Even(3, 40)) : Length(Even(3, 12));
        if (Chance(0.4))
            brake["stopResolution"] = _isBad ? Pick([0.5, 1, 2, 4]) : Pick([0.1, 0.25, 0.5, 1]);
        if (Chance(0.4))
            brake["capacity"] = new JsonObject { ["thickness"] = Fine(Even(1, 3)), ["ultimate"] = _isInch ? 60000 : 400 };
        return brake;
    }

    private JsonObject Curve(bool inChain)
    {
        var kind = inChain ? Pick(["arc", "progressive"]) : Pick(["arc", "arc", "arc", "arc", "progressive", "ellipse", "segments", "taper", "points"]);
        var sweep = inChain ? Even(10, 60) : _isBad && Chance(0.3) ? Even(150, 330) : Even(20, 200);
        sweep = Math.Round(sweep, 1);
        var radius = _isBad ? Log(4, 1500) : Log(30, 400);
        return kind switch
        {
            "arc" => Arc(radius, sweep),
            "progressive" => new()
            {
                ["type"] = kind,
                ["startRadius"] = Length(radius),
                ["endRadius"] = Length(radius * Even(0.5, 2.5)),
                ["sweep"] = Math.Min(sweep, 170),
                ["law"] = Pick(["involute", "clothoid", "logarithmic"]),
            },
            "ellipse" => Ellipse(radius, Math.Min(sweep, 120)),
            "segments" => Chain(),
            "taper" => new()
            {
                ["type"] = kind,
                ["near"] = Arc(radius, Math.Min(sweep, 150)),
                ["far"] = Arc(radius * Even(0.6, 1.8), Math.Min(sweep, 150)),
                ["length"] = Length(Even(150, 1200)),
            },
            _ => Points(radius, sweep * Math.PI / 180),
        };
    }

    private JsonObject Arc(double radius, double sweep) => new() { ["type"] = "arc", ["radius"] = Length(radius), ["sweep"] = sweep };

    private JsonObject Ellipse(double radius, double sweep)
    {
        var from = Math.Round(Even(0, 60), 1);
        return new()
        {
            ["type"] = "ellipse",
            ["semiAxisX"] = Length(radius * Even(1, 2)),
            ["semiAxisY"] = Length(radius * Even(1, 1.6)),
            ["fromNormal"] = from,
            ["toNormal"] = Math.Round(from + sweep, 1),
        };
    }

    private JsonObject Chain()
    {
        var pieces = new JsonArray();
        for (var i = _random.Next(2, 5); i > 0; i--)
        {
            pieces.Add(Curve(inChain: true));
            if (Chance(0.4))
                pieces.Add(new JsonObject { ["type"] = "flat", ["length"] = Length(Even(5, 80)) });
        }

        return new() { ["type"] = "segments", ["segments"] = pieces };
    }

    private JsonObject Points(double radius, double sweep)
    {
        var points = new JsonArray();
        for (var i = 0; i <= 24; i++)
        {
            var turn = sweep * i / 24;
            points.Add(new JsonArray(Length(radius * Math.Sin(turn)), Length(radius * (1 - Math.Cos(turn)))));
        }

        return new() { ["type"] = "points", ["points"] = points, ["tolerance"] = Length(0.5) };
    }

    private bool Chance(double share) => _random.NextDouble() < share;

    private double Even(double from, double to) => from + ((to - from) * _random.NextDouble());

    private double Log(double from, double to) => Math.Exp(Even(Math.Log(from), Math.Log(to)));

    private T Pick<T>(IReadOnlyList<T> items) => items[_random.Next(items.Count)];

    private double Length(double mm) => _isInch ? Math.Round(mm / 25.4, 3) : Math.Round(mm, 1);

    private double Fine(double mm) => _isInch ? Math.Round(mm / 25.4, 4) : Math.Round(mm, 2);
}
