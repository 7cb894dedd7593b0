package parts

import (
	"fmt"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"

	"tarpside/ui/look"
)

// Inked is a text or an icon as it stands on the screen, by the tokens of the
// look, so that a test can say whether it can be read.
type Inked struct {
	Text   string // nothing for an icon
	Icon   string // nothing for a text
	Ink    fyne.ThemeColorName
	Ground fyne.ThemeColorName // what it lies on
	Size   float32             // of the text, or the side of the icon, in pixels
	Bold   bool
	X, Y   float32 // middle, in pixels of the window
}

// InkedIn lists every text and icon that is in view in a tree, each with the
// ground that it was drawn on: the last opaque rectangle under its middle.
// What something drawn later hides is not listed.
func InkedIn(root fyne.CanvasObject, size fyne.Size) []Inked {
	var found []Inked
	var grounds []painted
	strokes(root, size, func(s stroke) {
		if s.ground() {
			box := s.box
			grounds = append(grounds, painted{box, s.with.ground})
			kept := found[:0]
			for _, k := range found {
				if !box.has(k.X, k.Y) {
					kept = append(kept, k)
				}
			}
			found = kept
		}
		k := Inked{Ink: s.with.ink, Icon: s.with.icon, X: (s.box.x0 + s.box.x1) / 2, Y: (s.box.y0 + s.box.y1) / 2, Ground: look.Ground}
		switch o := s.obj.(type) {
		case *canvas.Text:
			k.Text, k.Size, k.Bold = o.Text, o.TextSize, o.TextStyle.Bold
		case *canvas.Image:
			k.Size = o.Size().Width
		}
		if k.Text == "" && k.Icon == "" {
			return
		}
		for _, g := range grounds {
			if g.box.has(k.X, k.Y) {
				k.Ground = g.color
			}
		}
		found = append(found, k)
	})
	return found
}

type painted struct {
	box   rect
	color fyne.ThemeColorName
}

// stroke is one primitive of a pen, with its place in the window.
type stroke struct {
	obj   fyne.CanvasObject
	with  inked
	whole rect
	box   rect // what is in view of it
}

func (s stroke) ground() bool { return s.with.ground != "" && s.with.ground != look.Clear }

// strokes visits every primitive that is in view, in the order it is drawn:
// what a part draws, then what lies inside it.
func strokes(root fyne.CanvasObject, size fyne.Size, visit func(stroke)) {
	placed(root, fyne.Position{}, rectOf(fyne.Position{}, size), func(o fyne.CanvasObject, at fyne.Position, clip rect) {
		f, ok := o.(interface{ base() *face })
		if !ok {
			return
		}
		pen := &f.base().pen
		for i, obj := range pen.objs {
			s := stroke{obj: obj, with: pen.inks[i], whole: rectOf(at.Add(obj.Position()), obj.Size())}
			s.box = s.whole.and(clip)
			if !s.box.empty() {
				visit(s)
			}
		}
	})
}

// Faint lists, in words, every text and icon in view that does not stand out
// from its ground: 7 to 1 for names and states, 4.5 to 1 for second lines and
// for icons, whose meaning a word repeats (WCAG 2.1, 1.4.6 and 1.4.3).
func Faint(root fyne.CanvasObject, size fyne.Size) []string {
	var out []string
	for _, k := range InkedIn(root, size) {
		floor := 7.0
		if k.Ink == look.Dim || k.Icon != "" {
			floor = 4.5
		}
		if got := look.Contrast(look.Color(k.Ink), look.Color(k.Ground)); got < floor {
			out = append(out, fmt.Sprintf("%q%s, %s on %s, %.2f", k.Text, k.Icon, k.Ink, k.Ground, got))
		}
	}
	return out
}

// Sketch is what a tree draws, in words, one primitive a line under the part
// that draws it: places and sizes in whole pixels, colours by their tokens. It
// is the same on every machine, and a change of it can be read.
func Sketch(root fyne.CanvasObject, size fyne.Size) string {
	var b strings.Builder
	placed(root, fyne.Position{}, rectOf(fyne.Position{}, size), func(o fyne.CanvasObject, at fyne.Position, clip rect) {
		f, ok := o.(interface{ base() *face })
		if seen := rectOf(at, o.Size()).and(clip); !ok || seen.empty() {
			return
		}
		p := f.base().part
		if l, ok := o.(lister); ok {
			p = l.Part()
		}
		fmt.Fprintf(&b, "%s at %s", strings.TrimPrefix(fmt.Sprintf("%T", o), "*parts."), place4(at, o.Size()))
		if p.Kind != "" {
			fmt.Fprintf(&b, ": %s %q %q", p.Kind, p.ID, Plain(p.Text))
		}
		if p.State != "" {
			fmt.Fprintf(&b, " (%s)", p.State)
		}
		b.WriteByte('\n')
		pen := &f.base().pen
		for i, obj := range pen.objs {
			b.WriteString("  " + pen.inks[i].words(obj) + "\n")
		}
	})
	return b.String()
}

func place4(at fyne.Position, size fyne.Size) string {
	return fmt.Sprintf("%.0f,%.0f %.0fx%.0f", at.X, at.Y, size.Width, size.Height)
}

func (k inked) words(o fyne.CanvasObject) string {
	switch o := o.(type) {
	case *canvas.Text:
		weight := ""
		if o.TextStyle.Bold {
			weight = " bold"
		}
		return fmt.Sprintf("%.0f,%.0f %q %.0f%s %s", o.Position().X, o.Position().Y, o.Text, o.TextSize, weight, k.ink)
	case *canvas.Rectangle:
		out := fmt.Sprintf("%s %s", place4(o.Position(), o.Size()), k.ground)
		if k.ink != look.Clear && k.width > 0 {
			out += fmt.Sprintf(" in %s %.0f", k.ink, k.width)
		}
		if o.CornerRadius > 0 {
			out += fmt.Sprintf(" round %.0f", o.CornerRadius)
		}
		return out
	}
	if k.icon == "" {
		return place4(o.Position(), o.Size()) + " picture"
	}
	return fmt.Sprintf("%s icon %s %s", place4(o.Position(), o.Size()), k.icon, k.ink)
}
