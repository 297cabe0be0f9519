namespace FormApi.Hosting;

/// <summary><c>HEAD</c>: the head of what <c>GET</c> answers (RFC 9110, section 9.3.2); the server keeps the body back by itself.</summary>
internal static class HeadRequests
{
    /// <summary>Lets a request for a head pass as one for the whole.</summary>
    /// <param name="context">The request.</param>
    /// <param name="next">The rest of the pipeline.</param>
    public static async Task AnswerAsGet(HttpContext context, RequestDelegate next)
    {
        if (!HttpMethods.IsHead(context.Request.Method))
        {
            await next(context);
            return;
        }

        context.Request.Method = HttpMethods.Get;
        try
        {
            await next(context);
        }
        finally
        {
            context.Request.Method = HttpMethods.Head;
        }
    }
}
