namespace Holdfast.Fitting.Solving;

/// <summary>The memory that one fit works in, taken once so that the loop allocates nothing.</summary>
/// <param name="rows">Observations.</param>
/// <param name="columns">Parameters.</param>
internal sealed class Workspace(int rows, int columns)
{
    /// <summary>Observations.</summary>
    public int Rows => rows;

    /// <summary>Parameters.</summary>
    public int Columns => columns;

    /// <summary>Weighted residuals √w (y − f).</summary>
    public double[] Residual { get; private set; } = new double[rows];

    /// <summary>Weighted slopes √w ∂f/∂θ, by columns.</summary>
    public double[] Jacobian { get; private set; } = new double[rows * columns];

    /// <summary>Residuals at the trial point.</summary>
    public double[] TrialResidual { get; private set; } = new double[rows];

    /// <summary>Slopes at the trial point.</summary>
    public double[] TrialJacobian { get; private set; } = new double[rows * columns];

    /// <summary>Square roots of the weights.</summary>
    public double[] RootWeight { get; } = new double[rows];

    /// <summary>Orthogonal factors of the free columns.</summary>
    public double[] Factor { get; } = new double[rows * columns];

    /// <summary>Heads of the reflectors of the last factors.</summary>
    public double[] Heads { get; } = new double[columns];

    /// <summary>Q′r.</summary>
    public double[] Rotated { get; } = new double[rows];

    /// <summary>Factors of the damped system, 2p × p.</summary>
    public double[] Damped { get; } = new double[2 * columns * columns];

    /// <summary>Right-hand side of the damped system.</summary>
    public double[] DampedRight { get; } = new double[2 * columns];

    /// <summary>Running maximum of the column norms, squared.</summary>
    public double[] Scale { get; } = new double[columns];

    /// <summary>Positions of the parameters that are free.</summary>
    public int[] Free { get; } = new int[columns];

    /// <summary>Trial point.</summary>
    public double[] Trial { get; } = new double[columns];

    /// <summary>Step, over all parameters.</summary>
    public double[] Step { get; } = new double[columns];

    /// <summary>Step, over the free parameters.</summary>
    public double[] FreeStep { get; } = new double[columns];

    /// <summary>Makes the trial point the present one.</summary>
    public void TakeTrial()
    {
        (Residual, TrialResidual) = (TrialResidual, Residual);
        (Jacobian, TrialJacobian) = (TrialJacobian, Jacobian);
    }
}
