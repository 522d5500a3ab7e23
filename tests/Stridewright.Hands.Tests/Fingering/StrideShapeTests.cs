using Stridewright.Music;

namespace Stridewright.Hands.Tests;

public sealed class StrideShapeTests(ITestOutputHelper output)
{
    [Fact]
    public void Nine_in_ten_notes_of_thirty_shapes_are_fingered_as_written_by_hand()
    {
        Assert.Equal(30, StrideShapes.All.Length);
        var (matched, all) = (0, 0);
        foreach (var shape in StrideShapes.All)
        {
            var score =
                shape.Hand == Hand.Left
                    ? Written.Left(Metre.FourFour, shape.Bar)
                    : Written.Right(Metre.FourFour, shape.Bar);
            var found = Fingered.Text(Fingered.Hand(score, shape.Hand, hands: new() { SpanMm = shape.SpanMm }));
            Assert.Equal(shape.Fingers.Length, found.Length);
            var same = shape.Fingers.Zip(found).Count(f => f.First == f.Second && f.First != ' ');
            var notes = shape.Fingers.Count(f => f != ' ');
            (matched, all) = (matched + same, all + notes);
            if (same < notes)
            {
                output.WriteLine($"{shape.Hand} {shape.What}: {shape.Bar}: by hand {shape.Fingers}, found {found}");
            }
        }
        output.WriteLine($"{matched} of {all} notes");
        Assert.True(matched >= 0.9 * all, $"{matched} of {all} notes");
    }
}
