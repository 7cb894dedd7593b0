package parts

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/widget"

	"tarpside/ui/look"
)

// face is the common base of all parts: it draws with a pen, may hold other
// objects inside, and knows how it is listed in the parts file.
type face struct {
	widget.BaseWidget
	pen    Pen
	paint  func(p *Pen, size fyne.Size)
	w, h   float32 // least size in design pixels
	part   Part
	kids   []fyne.CanvasObject
	covers bool
	owner  fyne.CanvasObject
}

func (f *face) init(self fyne.Widget, w, h float32, paint func(*Pen, fyne.Size)) {
	f.w, f.h, f.paint = w, h, paint
	f.owner = self
	f.ExtendBaseWidget(self)
}

// Part is how the part is listed in the parts file; place and size are filled
// in by [Collect].
func (f *face) Part() Part { return f.part }

// Inside lists the objects that lie inside, in the order they are drawn.
func (f *face) Inside() []fyne.CanvasObject { return f.kids }

// Cut lists the texts that did not fit at the last drawing and were cut.
func (f *face) Cut() []string { return f.pen.cuts }

// Covers says whether what lies under the part can neither be seen nor touched.
func (f *face) Covers() bool { return f.covers }

// CreateRenderer links the part to the toolkit.
func (f *face) CreateRenderer() fyne.WidgetRenderer { return &brush{f: f} }

// redraw draws the part. Where the tablet's text scale is too much for the
// room, the whole part steps down together, to 1.0 at the least.
func (f *face) redraw() {
	size := f.Size()
	f.pen.scale = look.Current().Options().Text
	for {
		f.pen.start()
		if size.Width < 1 || size.Height < 1 {
			return
		}
		f.paint(&f.pen, size)
		if f.pen.scale <= 1 || len(f.pen.cuts) == 0 && !f.pen.crowded(size) {
			return
		}
		f.pen.scale = max(f.pen.scale-textStep, 1)
	}
}

const textStep = 0.15

// brush is the renderer of every part.
type brush struct {
	f    *face
	objs []fyne.CanvasObject
}

func (b *brush) Layout(fyne.Size) { b.f.redraw() }

func (b *brush) MinSize() fyne.Size { return fyne.NewSize(look.U(b.f.w), look.U(b.f.h)) }

func (b *brush) Refresh() {
	b.f.redraw()
	canvas.Refresh(b.f.owner)
}

func (b *brush) Objects() []fyne.CanvasObject {
	if len(b.f.kids) == 0 {
		return b.f.pen.objs
	}
	b.objs = append(append(b.objs[:0], b.f.pen.objs...), b.f.kids...)
	return b.objs
}

func (b *brush) Destroy() {}

// Drawn is a part for reading, drawn by a function of the screen's own.
type Drawn struct{ face }

// NewDrawn makes a part that is drawn by paint whenever its size, the theme
// or, through Refresh, its matter changes. Least size in design pixels.
func NewDrawn(part Part, w, h float32, paint func(p *Pen, size fyne.Size)) *Drawn {
	d := &Drawn{}
	d.part = part
	d.init(d, w, h, paint)
	return d
}

// SetPart changes how the part is listed.
func (d *Drawn) SetPart(part Part) { d.part = part }

func (f *face) base() *face { return f }
