using System.Text.Json;
using Holdfast.Studies;
using Microsoft.AspNetCore.Http;

namespace Holdfast.Web.Guards;

/// <summary>Turns what goes wrong in a request into a status and one plain sentence: what was sent, what the study says, or a fault of ours.</summary>
internal static class Slips
{
    /// <summary>Answers for what comes after.</summary>
    /// <param name="context">The request.</param>
    /// <param name="next">What comes after.</param>
    public static async Task Answer(HttpContext context, RequestDelegate next)
    {
        try
        {
            await next(context).ConfigureAwait(false);
        }
        catch (OperationCanceledException) when (context.RequestAborted.IsCancellationRequested)
        {
            // Whoever asked is gone.
        }
#pragma warning disable CA1031 // The outermost door of a request: a fault of ours becomes a plain answer.
        catch (Exception e) when (!context.Response.HasStarted)
#pragma warning restore CA1031
        {
            var (status, sentence) = Of(e);
            context.Response.Clear();
            await PageHeaders.Add(context, c => Refusal.Write(c, status, sentence)).ConfigureAwait(false);
        }
    }

    private static (int Status, string Sentence) Of(Exception e) => e switch
    {
        BadHttpRequestException { StatusCode: StatusCodes.Status413PayloadTooLarge } => (StatusCodes.Status413PayloadTooLarge, "That is larger than can be sent at once, so nothing of it was taken."),
        BadHttpRequestException bad => (bad.StatusCode, "The request could not be read, so nothing was changed."),
        JsonException => (StatusCodes.Status400BadRequest, "The request could not be read, so nothing was changed."),
        StudyException trouble => (StatusCodes.Status409Conflict, $"{trouble.Code} {trouble.Message}"),
        _ => (StatusCodes.Status500InternalServerError, $"This is a fault in Holdfast, not in your data ({e.GetType().Name}). Nothing half-done was kept."),
    };
}
