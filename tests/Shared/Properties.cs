using System.Globalization;
using System.Runtime.CompilerServices;
using System.Text;
using CsCheck;

namespace Forming.Tests;

/// <summary>Facts that hold for every value of a generator, on draws that are the same in every run.</summary>
/// <remarks>
/// CsCheck draws from the clock, so that a run could be red by chance. Here every fact draws from a seed of its own, made of its name and
/// of <c>PROPERTY_SEED</c>; <c>PROPERTY_TIMES</c> makes it draw more often. The nightly run sets both and prints them.
/// </remarks>
internal static class Properties
{
    private static readonly ulong Seed = Number("PROPERTY_SEED", 1);
    private static readonly ulong Times = Number("PROPERTY_TIMES", 1);

    /// <summary>Holds a fact against draws; CsCheck shrinks the first that breaks it and prints its seed.</summary>
    /// <typeparam name="T">What is drawn.</typeparam>
    /// <param name="gen">The generator.</param>
    /// <param name="fact">Throws where the fact does not hold.</param>
    /// <param name="iter">Number of draws.</param>
    /// <param name="name">The fact's name.</param>
    public static void ForAll<T>(this Gen<T> gen, Action<T> fact, int iter = 100, [CallerMemberName] string name = "")
    {
        var random = new PCG(1, SeedOf(name));
        for (var i = 0UL; i < (ulong)iter * Times; i++)
        {
            var state = random.State;
            var value = gen.Generate(random, null!, out _);
            try
            {
                fact(value);
            }
            catch (Exception broken) when (broken is not OutOfMemoryException)
            {
                gen.Sample(fact, seed: random.ToString(state), iter: 50, threads: 1);
                throw;
            }
        }
    }

    /// <inheritdoc cref="ForAll{T}"/>
    public static void ForAll<T1, T2>(this Gen<(T1, T2)> gen, Action<T1, T2> fact, int iter = 100, [CallerMemberName] string name = "") =>
        gen.ForAll(t => fact(t.Item1, t.Item2), iter, name);

    /// <inheritdoc cref="ForAll{T}"/>
    public static void ForAll<T1, T2, T3>(this Gen<(T1, T2, T3)> gen, Action<T1, T2, T3> fact, int iter = 100, [CallerMemberName] string name = "") =>
        gen.ForAll(t => fact(t.Item1, t.Item2, t.Item3), iter, name);

    /// <inheritdoc cref="ForAll{T}"/>
    public static void ForAll<T1, T2, T3, T4>(this Gen<(T1, T2, T3, T4)> gen, Action<T1, T2, T3, T4> fact, int iter = 100, [CallerMemberName] string name = "") =>
        gen.ForAll(t => fact(t.Item1, t.Item2, t.Item3, t.Item4), iter, name);

    /// <inheritdoc cref="ForAll{T}"/>
    public static void ForAll<T1, T2, T3, T4, T5>(
        this Gen<(T1, T2, T3, T4, T5)> gen, Action<T1, T2, T3, T4, T5> fact, int iter = 100, [CallerMemberName] string name = "") =>
        gen.ForAll(t => fact(t.Item1, t.Item2, t.Item3, t.Item4, t.Item5), iter, name);

    /// <inheritdoc cref="ForAll{T}"/>
    public static void ForAll<T1, T2, T3, T4, T5, T6>(
        this Gen<(T1, T2, T3, T4, T5, T6)> gen, Action<T1, T2, T3, T4, T5, T6> fact, int iter = 100, [CallerMemberName] string name = "") =>
        gen.ForAll(t => fact(t.Item1, t.Item2, t.Item3, t.Item4, t.Item5, t.Item6), iter, name);

    /// <inheritdoc cref="ForAll{T}"/>
    public static void ForAll<T1, T2, T3, T4, T5, T6, T7>(
        this Gen<(T1, T2, T3, T4, T5, T6, T7)> gen, Action<T1, T2, T3, T4, T5, T6, T7> fact, int iter = 100, [CallerMemberName] string name = "") =>
        gen.ForAll(t => fact(t.Item1, t.Item2, t.Item3, t.Item4, t.Item5, t.Item6, t.Item7), iter, name);

    /// <inheritdoc cref="ForAll{T}"/>
    public static void ForAll<T1, T2, T3, T4, T5, T6, T7, T8>(
        this Gen<(T1, T2, T3, T4, T5, T6, T7, T8)> gen, Action<T1, T2, T3, T4, T5, T6, T7, T8> fact, int iter = 100, [CallerMemberName] string name = "") =>
        gen.ForAll(t => fact(t.Item1, t.Item2, t.Item3, t.Item4, t.Item5, t.Item6, t.Item7, t.Item8), iter, name);

    // FNV-1a: string hash codes differ from run to run.
    private static ulong SeedOf(string name)
    {
        var hash = 14695981039346656037UL ^ Seed;
        foreach (var letter in Encoding.UTF8.GetBytes(name))
            hash = (hash ^ letter) * 1099511628211UL;
        return hash;
    }

    private static ulong Number(string variable, ulong otherwise) =>
        Environment.GetEnvironmentVariable(variable) is { Length: > 0 } text ? ulong.Parse(text, CultureInfo.InvariantCulture) : otherwise;
}
