package look

import (
	"bytes"
	"fmt"
	"image"
	"image/color"
	"math"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/theme"
)

// The published pair white and #0000FF is 8.59 to 1 (WCAG working example, as
// quoted in teaching material on contrast); black and white are 21 to 1.
func TestContrastFormulaGivesThePublishedRatios(t *testing.T) {
	white, black := color.White, color.Black
	if got := Contrast(white, black); math.Abs(got-21) > 1e-9 {
		t.Errorf("white on black is %v, want 21", got)
	}
	if got := Contrast(color.NRGBA{B: 255, A: 255}, white); math.Abs(got-8.59) > 0.005 {
		t.Errorf("blue on white is %.4f, want 8.59", got)
	}
}

func TestEveryTextStandsOutFromEveryGroundItLiesOn(t *testing.T) {
	type pair struct {
		text  fyne.ThemeColorName
		least float64
		on    []fyne.ThemeColorName
	}
	// Names and states: 7 to 1, the AAA level of WCAG 2.1 (1.4.6). Second
	// lines: 4.5 to 1, the AA level (1.4.3). What is really drawn is walked in
	// ui/parts and cmd/gallery.
	all := []fyne.ThemeColorName{Ground, Surface, Raised, Soft, AlarmGround}
	pairs := []pair{
		{Text, 7, all}, {Dim, 4.5, all}, {Accent, 7, all}, {Alarm, 7, all},
		{OnFill, 7, []fyne.ThemeColorName{Fill}},
	}
	for _, paint := range MarkColors() {
		pairs = append(pairs, pair{markPaint(paint), 8, []fyne.ThemeColorName{MarkGround}})
	}
	for _, opt := range []Options{{}, {Day: true}, {Locked: true}, {Day: true, Locked: true}} {
		th := New(opt)
		for _, p := range pairs {
			for _, ground := range p.on {
				got := Contrast(th.Color(p.text, 0), th.Color(ground, 0))
				if got < p.least {
					t.Errorf("%+v: %s on %s is %.2f, want %.1f", opt, p.text, ground, got, p.least)
				}
			}
		}
	}
}

// A segment of the balance must stand out from the foot: 3 to 1, the level of
// WCAG 2.1 for graphics (1.4.11).
func TestEverySegmentOfTheBalanceIsSeenOnTheFoot(t *testing.T) {
	for _, opt := range []Options{{}, {Day: true}} {
		th := New(opt)
		for _, c := range []fyne.ThemeColorName{Accent, Balance1, Balance2, Balance3, Balance4, Alarm} {
			if got := Contrast(th.Color(c, 0), th.Color(Surface, 0)); got < 3 {
				t.Errorf("%+v: %s on the foot is %.2f, want 3", opt, c, got)
			}
		}
	}
}

func TestTheDesktopsOwnVariantIsIgnored(t *testing.T) {
	th := New(Options{})
	for name := range night {
		if th.Color(name, theme.VariantDark) != th.Color(name, theme.VariantLight) {
			t.Errorf("%s follows the desktop", name)
		}
	}
}

func TestBothPalettesHaveTheSameTokensAndEveryToolkitColour(t *testing.T) {
	test.NewTempApp(t)
	for name := range night {
		if _, ok := day[name]; !ok {
			t.Errorf("%s is missing by day", name)
		}
	}
	if len(day) != len(night) {
		t.Errorf("%d tokens by day, %d at night", len(day), len(night))
	}
	test.AssertAllColorNamesDefined(t, New(Options{}), "night")
	test.AssertAllColorNamesDefined(t, New(Options{Day: true}), "day")
}

func TestMillimetresFollowTheGlass(t *testing.T) {
	app := test.NewTempApp(t)
	app.Settings().SetTheme(New(Options{}))
	if got := MM(20); got != 118 {
		t.Errorf("20 mm at 149 px an inch are %v px, want 118", got)
	}
	if got := U(Floor); got != 88 {
		t.Errorf("88 design px are %v px at 149 px an inch", got)
	}
	// A bank card is 85.60 mm long (ISO/IEC 7810, ID-1): 1011 px of it at
	// 300 px an inch.
	per := PerInchOfCard(1011.02)
	if math.Abs(float64(per)-300) > 0.01 {
		t.Errorf("a card of 1011.02 px gives %v px an inch, want 300", per)
	}
	app.Settings().SetTheme(New(Options{PerInch: per}))
	if got := MM(20); got != 237 {
		t.Errorf("20 mm at 300 px an inch are %v px, want 237", got)
	}
}

func TestTextScaleChangesTextButNotTargets(t *testing.T) {
	app := test.NewTempApp(t)
	app.Settings().SetTheme(New(Options{Text: 1.6}))
	if got := Body.Size(); math.Abs(float64(got)-28.8) > 0.01 {
		t.Errorf("body text is %v px at 1.6, want 28.8", got)
	}
	if Body.Base() != 18 || U(Floor) != 88 {
		t.Errorf("base %v, floor %v: changed with the text scale", Body.Base(), U(Floor))
	}
	if got := New(Options{Text: 9}).Options().Text; got != 1.6 {
		t.Errorf("a text scale of 9 became %v, want the largest, 1.6", got)
	}
}

func TestNoRoleIsUnderSixteen(t *testing.T) {
	for r := Small; r <= Figure; r++ {
		if scale[r].px < 16 {
			t.Errorf("role %d is %v px", r, scale[r].px)
		}
	}
}

// ink counts the pixels of a picture that differ from its ground.
func inked(img image.Image, ground color.Color) int {
	n := 0
	gr, gg, gb, _ := ground.RGBA()
	for y := img.Bounds().Min.Y; y < img.Bounds().Max.Y; y++ {
		for x := img.Bounds().Min.X; x < img.Bounds().Max.X; x++ {
			r, g, b, _ := img.At(x, y).RGBA()
			if r != gr || g != gg || b != gb {
				n++
			}
		}
	}
	return n
}

func TestEveryIconDrawsInTheColourOfTheMoment(t *testing.T) {
	test.NewTempApp(t)
	if len(Icons()) < 45 {
		t.Fatalf("%d icons", len(Icons()))
	}
	for _, opt := range []Options{{}, {Day: true}} {
		th := New(opt)
		for _, name := range Icons() {
			o := canvas.NewImageFromResource(Sized(Icon(name), 24))
			img := Draw(o, fyne.NewSize(24, 24), th)
			n := inked(img, th.Color(Ground, 0))
			if n < 20 || n > 400 {
				t.Errorf("%s covers %d of 576 px", name, n)
			}
			want := []byte(hex(th.Color(Text, 0)))
			if !bytes.Contains(Icon(name).Content(), want) {
				t.Errorf("%s is not drawn in %s", name, want)
			}
		}
	}
}

func TestIconsAreOneStrokeOfTwoOnATwentyFourGrid(t *testing.T) {
	for name, svg := range icons() {
		for _, want := range []string{`viewBox="0 0 24 24"`, `stroke-width="2"`, `stroke-linecap="round"`, `fill="none"`} {
			if !strings.Contains(svg, want) {
				t.Errorf("%s lacks %s", name, want)
			}
		}
		if strings.Count(svg, "stroke-width") != 1 {
			t.Errorf("%s has more than one stroke", name)
		}
	}
}

func TestAnIconThatDoesNotExistIsSeen(t *testing.T) {
	if HasIcon("no-such-icon") {
		t.Fatal("it exists")
	}
	if !bytes.Equal(Icon("no-such-icon").Content(), Icon("warn").Content()) {
		t.Error("a slip in a name must give the octagon")
	}
}

func TestStrokesGrowWithTheIcon(t *testing.T) {
	test.NewTempApp(t)
	th := New(Options{})
	count := func(px float32) int {
		o := canvas.NewImageFromResource(Sized(Icon("bar"), px))
		return inked(Draw(o, fyne.NewSize(px, px), th), th.Color(Ground, 0))
	}
	small, large := count(24), count(96)
	if ratio := float64(large) / float64(small); ratio < 11 || ratio > 18 {
		t.Errorf("four times the size covers %.1f times the pixels, want about 16", ratio)
	}
}

func TestMarksDifferByShapeAloneAndByPaintAlone(t *testing.T) {
	test.NewTempApp(t)
	th := New(Options{})
	seen := map[string]string{}
	for _, shape := range MarkShapes() {
		for _, paint := range MarkColors() {
			o := canvas.NewImageFromResource(Sized(MarkIcon(shape, paint), 24))
			img := Draw(o, fyne.NewSize(24, 24), th).(*image.NRGBA)
			key := fmt.Sprint(img.Pix)
			if other, ok := seen[key]; ok {
				t.Errorf("%s %s looks like %s", paint, shape, other)
			}
			seen[key] = paint + " " + shape
		}
	}
	if MarkIcon("diamond", "red") != nil {
		t.Error("a diamond is a hazard placard, not a mark")
	}
}
