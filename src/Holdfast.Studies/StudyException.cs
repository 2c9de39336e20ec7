namespace Holdfast.Studies;

/// <summary>The world, or the state of the study, stands in the way. The message says what happened, what it means and what to do.</summary>
public sealed class StudyException : Exception
{
    /// <summary>A failure with its code.</summary>
    /// <param name="code">One of <see cref="Codes"/>.</param>
    /// <param name="message">At most about 25 words, the thing named.</param>
    /// <param name="inner">What the platform said, or null.</param>
    public StudyException(string code, string message, Exception? inner = null) : base(message, inner) => Code = code;

    /// <summary>One of <see cref="Codes"/>.</summary>
    public string Code { get; }
}
