using System.Text.Json;
using FluentValidation;
using FormApi.Features.Forms;
using FormApi.Features.Programs;
using FormApi.Http.Rules;
using FormApi.Http.Units;

namespace FormApi.Tests;

/// <summary>Rules name fields that are there, as the wire spells them.</summary>
/// <param name="service">The service, which sets how rules spell names.</param>
public sealed class RulesTests(Service service) : IClassFixture<Service>
{
    [Fact]
    public void Every_rule_names_a_field_of_its_record()
    {
        Assert.NotNull(service.Services);
        var named = 0;
        foreach (var made in FieldRanges.Validators)
        {
            var record = FieldRanges.CheckedBy(made.Key);
            foreach (var name in made.SelectMany(NamesOf))
            {
                Assert.True(IsField(record, name), $"{made.Key.Name}: {record.Name} has no {name}.");
                named++;
            }
        }

        Assert.True(named > 200, $"Only {named} names were looked at.");
    }

    [Theory]
    [InlineData("width", true)]
    [InlineData("springback.effectiveYield", true)]
    [InlineData("stockSheets", true)]
    [InlineData("effectiveYield", false)]
    [InlineData("springback.yield", false)]
    [InlineData("Width", false)]
    public void A_name_is_a_field_only_where_the_record_has_it(string name, bool isThere) => Assert.Equal(isThere, IsField(typeof(PanelInput), name));

    [Fact]
    public void A_field_with_two_ranges_says_where_each_holds()
    {
        Assert.NotNull(service.Services);
        var inTwo = CheckedRecords()
            .SelectMany(type => type.GetProperties().Select(field => (Name: $"{type.Name}.{field.Name}", Ranges: FieldRanges.Of(type, JsonNamingPolicy.CamelCase.ConvertName(field.Name)))))
            .Where(field => field.Ranges.Count > 1)
            .ToArray();
        Assert.All(inTwo, field => Assert.True(field.Ranges.Count(range => range.Where is null) <= 1, field.Name));
        Assert.All(inTwo, field => Assert.Equal(field.Ranges.Count, field.Ranges.Select(range => range.Where).Distinct().Count()));
        Assert.Equal(["ArcInput.Sweep", "MarksInput.Resolution", "ProgressiveInput.Sweep"], inTwo.Select(field => field.Name).Order());
    }

    private static IEnumerable<Type> CheckedRecords() => FieldRanges.Validators.Select(made => FieldRanges.CheckedBy(made.Key)).Distinct();

    [Fact]
    public void A_field_within_a_field_is_named_by_its_whole_path()
    {
        Assert.NotNull(service.Services);
        Assert.Contains("tools.minLand", NamesOf(new ProgramBrakeInputRules(UnitSystem.Mm)));
        Assert.Equal("panel.clamp.height", FieldNames.PathOf((FormRequest request) => request.Panel.Clamp!.Height));
    }

    // A rule without a name is about the record itself.
    private static IEnumerable<string> NamesOf(IValidator validator) =>
        validator.CreateDescriptor().Rules.Select(rule => rule.PropertyName).Where(name => !string.IsNullOrEmpty(name));

    private static bool IsField(Type record, string path)
    {
        var here = record;
        foreach (var step in path.Split('.'))
        {
            var member = here.GetProperties().FirstOrDefault(property => JsonNamingPolicy.CamelCase.ConvertName(property.Name) == step);
            if (member is null)
                return false;
            here = Nullable.GetUnderlyingType(member.PropertyType) ?? member.PropertyType;
        }

        return true;
    }
}
