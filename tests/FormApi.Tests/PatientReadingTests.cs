using System.IO.Pipelines;
using FormApi.Http.Requests;

namespace FormApi.Tests;

/// <summary>Reading from a caller who may be slow, or go away.</summary>
public class PatientReadingTests
{
    private static readonly TimeSpan Long = TimeSpan.FromMinutes(1);

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public async Task A_read_that_is_given_up_leaves_the_reader_to_be_read_on(bool hasGone)
    {
        var pipe = new Pipe();
        using var gone = new CancellationTokenSource();
        var longest = hasGone ? Long : TimeSpan.FromMilliseconds(1);
        var reading = pipe.Reader.ReadWithinAsync(longest, gone.Token).AsTask();
        if (hasGone)
        {
            await gone.CancelAsync();
            await Assert.ThrowsAnyAsync<OperationCanceledException>(() => reading);
        }
        else
        {
            await Assert.ThrowsAsync<TimeoutException>(() => reading);
        }

        await pipe.Writer.WriteAsync(new byte[] { 1, 2 });
        var read = await pipe.Reader.ReadWithinAsync(Long, CancellationToken.None);
        Assert.Equal(2, read.Buffer.Length);
    }

    [Fact]
    public async Task Who_has_gone_before_the_read_is_not_waited_for()
    {
        var pipe = new Pipe();
        var reading = pipe.Reader.ReadWithinAsync(Long, new CancellationToken(canceled: true)).AsTask();
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => reading);
    }
}
