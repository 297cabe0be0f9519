using System.Buffers;
using System.Text;
using FormApi.Http.Json;

namespace FormApi.Tests;

/// <summary>Canonical JSON, against the examples of RFC 8785.</summary>
public sealed class CanonicalJsonTests
{
    // RFC 8785, section 3.2.2 and appendix B.
    [Theory]
    [InlineData(0.0, "0")]
    [InlineData(333333333.33333329, "333333333.3333333")]
    [InlineData(1E30, "1e+30")]
    [InlineData(4.50, "4.5")]
    [InlineData(2e-3, "0.002")]
    [InlineData(0.000000000000000000000000001, "1e-27")]
    [InlineData(5e-324, "5e-324")]
    [InlineData(-5e-324, "-5e-324")]
    [InlineData(1.7976931348623157e308, "1.7976931348623157e+308")]
    [InlineData(9007199254740992, "9007199254740992")]
    [InlineData(-9007199254740992, "-9007199254740992")]
    [InlineData(295147905179352830000.0, "295147905179352830000")]
    [InlineData(9.999999999999997e22, "9.999999999999997e+22")]
    [InlineData(1e23, "1e+23")]
    [InlineData(999999999999999700000.0, "999999999999999700000")]
    [InlineData(1e21, "1e+21")]
    [InlineData(9.999999999999997e-7, "9.999999999999997e-7")]
    [InlineData(0.000001, "0.000001")]
    [InlineData(0.00001234, "0.00001234")]
    [InlineData(333333333.3333332, "333333333.3333332")]
    [InlineData(123456789012345680, "123456789012345680")]
    [InlineData(1e15, "1000000000000000")]
    [InlineData(-1424953923781206.2, "-1424953923781206.2")]
    public void Numbers_are_written_as_ecmascript_does(double number, string text)
    {
        Assert.Equal(text, CanonicalJson.Number(number));
        Assert.Equal(text, Of(number.ToString("R", System.Globalization.CultureInfo.InvariantCulture)));
    }

    [Fact]
    public void Names_are_sorted_by_utf16_units_and_text_is_barely_escaped()
    {
        const string Given = """{"\u20ac":"Euro","\r":"CR","1":"One","\ud83d\ude00":"Smile","\ufb33":"Dalet","\u00f6":"ö","\u0080":"C"}""";
        Assert.Equal("{\"\\r\":\"CR\",\"1\":\"One\",\"\u0080\":\"C\",\"ö\":\"ö\",\"€\":\"Euro\",\"😀\":\"Smile\",\"\ufb33\":\"Dalet\"}", Of(Given));
    }

    [Fact]
    public void Nothing_is_left_between()
    {
        Assert.Equal("""{"a":[1,true,null,{}],"b":[]}""", Of("""{ "b" : [ ], "a" : [ 1.0, true, null, { } ] }"""));
        Assert.Equal("\"\\\"\\\\\\n\\u0001/\"", Of("\"\\\"\\\\\\n\\u0001\\/\""));
    }

    private static string Of(string json)
    {
        var buffer = new ArrayBufferWriter<byte>();
        CanonicalJson.Write(Encoding.UTF8.GetBytes(json), buffer);
        return Encoding.UTF8.GetString(buffer.WrittenSpan);
    }
}
