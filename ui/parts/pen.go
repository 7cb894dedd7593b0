package parts

import (
	"math"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"

	"tarpside/ui/look"
)

// Pen draws a part. The same primitives are used again at each drawing and
// only those that changed are refreshed, so a part may simply draw itself
// anew. Positions and sizes are pixels of the glass.
type Pen struct {
	rects   []*canvas.Rectangle
	texts   []*canvas.Text
	images  []*canvas.Image
	names   []string // what each image shows, colours included
	lies    []bool   // which images text is meant to lie on
	r, t, i int
	objs    []fyne.CanvasObject
	inks    []inked // by what each of objs is drawn with
	cuts    []string
	scale   float32 // of the text; nought for that of the tablet
}

// Size is the size that a role is set in, in pixels.
func (p *Pen) Size(r look.Role) float32 {
	if p.scale == 0 {
		return r.Size()
	}
	return r.Base() * p.scale
}

// inked is what one primitive is drawn with, by the tokens of the look.
type inked struct {
	ink    fyne.ThemeColorName // of a text or an icon, or of the edge of a rectangle
	ground fyne.ThemeColorName // of a rectangle, or of a picture that text lies on
	width  float32             // of the edge
	icon   string              // its name
}

func (p *Pen) add(o fyne.CanvasObject, k inked) {
	p.objs, p.inks = append(p.objs, o), append(p.inks, k)
}

func (p *Pen) start() {
	p.r, p.t, p.i = 0, 0, 0
	p.objs, p.inks = p.objs[:0], p.inks[:0]
	p.cuts = p.cuts[:0]
}

func place(o fyne.CanvasObject, x, y, w, h float32) {
	o.Move(fyne.NewPos(round(x), round(y)))
	o.Resize(fyne.NewSize(w, h))
}

func round(v float32) float32 { return float32(math.Round(float64(v))) }

// Rect draws a rectangle: ground, border colour, border width, radius.
func (p *Pen) Rect(x, y, w, h float32, ground, edge fyne.ThemeColorName, width, radius float32) {
	if p.r == len(p.rects) {
		p.rects = append(p.rects, canvas.NewRectangle(nil))
	}
	o := p.rects[p.r]
	p.r++
	fill, stroke := look.Color(ground), look.Color(edge)
	if o.FillColor != fill || o.StrokeColor != stroke || o.StrokeWidth != width || o.CornerRadius != radius {
		o.FillColor, o.StrokeColor, o.StrokeWidth, o.CornerRadius = fill, stroke, width, radius
		o.Refresh()
	}
	place(o, x, y, round(max(w, 0)), round(max(h, 0)))
	p.add(o, inked{ink: edge, ground: ground, width: width})
}

// Fill draws a rectangle without a border.
func (p *Pen) Fill(x, y, w, h float32, ground fyne.ThemeColorName) {
	p.Rect(x, y, w, h, ground, look.Clear, 0, 0)
}

// Image draws a picture of the look package, keeping its proportions.
func (p *Pen) Image(res fyne.Resource, x, y, w, h float32) {
	if p.i == len(p.images) {
		img := &canvas.Image{FillMode: canvas.ImageFillContain}
		p.images, p.names, p.lies = append(p.images, img), append(p.names, ""), append(p.lies, false)
	}
	o := p.images[p.i]
	place(o, x, y, round(w), round(h))
	res = look.Sized(res, round(w)*deviceScale(o))
	if name := res.Name(); name != p.names[p.i] {
		p.names[p.i] = name
		o.Resource = res
		o.Refresh()
	}
	p.lies[p.i] = false
	p.i++
	p.add(o, inked{})
}

// Under draws a picture that text is meant to lie on, and says what colour
// its ground is.
func (p *Pen) Under(res fyne.Resource, ground fyne.ThemeColorName, x, y, w, h float32) {
	p.Image(res, x, y, w, h)
	p.lies[p.i-1] = true
	p.inks[len(p.inks)-1].ground = ground
}

// deviceScale is how many device pixels make one of ours on an object's canvas.
func deviceScale(o fyne.CanvasObject) float32 {
	d := fyne.CurrentApp().Driver()
	if c := d.CanvasForObject(o); c != nil {
		return c.Scale()
	}
	if all := d.AllWindows(); len(all) > 0 {
		return all[0].Canvas().Scale()
	}
	return 1
}

// Icon draws an icon in a square of the given size.
func (p *Pen) Icon(name string, token fyne.ThemeColorName, x, y, size float32) {
	p.Image(look.IconIn(name, token), x, y, size, size)
	p.inks[len(p.inks)-1] = inked{ink: token, icon: name}
}

// Ink says how a text is set.
type Ink struct {
	Role  look.Role
	Color fyne.ThemeColorName
	Align fyne.TextAlign // leading, centre or trailing
	Lines int            // at most so many; nought for as many as there is height for
	First float32        // so many pixels are kept free at the end of the first lines ...
	Deep  float32        // ... as far down as this, in pixels; nought for the first line alone
	Keep  bool           // keep the role's size: wrap or cut before going smaller
	Whole bool           // a name: its number or unit is not left alone on a line
}

// notch is what is kept free at the end of a line.
func (k Ink) notch(line int, pitch float32) float32 {
	if line == 0 || float32(line)*pitch+pitch*0.2 < k.Deep {
		return k.First
	}
	return 0
}

// Laid is a text that has been fitted to a width and a height.
type Laid struct {
	lines []line
	ink   Ink
	size  float32
	pitch float32
	W, H  float32
	cut   bool
	whole string
}

// lastWidth is how wide the last line is.
func (l Laid) lastWidth() (w float32) {
	if len(l.lines) > 0 {
		for _, r := range l.lines[len(l.lines)-1] {
			w += rulerOf(l.size)(r.text, r.bold)
		}
	}
	return w
}

// Cut says whether the text had no room.
func (l Laid) Cut() bool { return l.cut }

func rulerOf(size float32) ruler {
	return func(s string, bold bool) float32 {
		return look.Measure(s, size, fyne.TextStyle{Bold: bold}).Width
	}
}

// Fit lays a text out in a width and a height. It takes the role's size with
// the text scale of the tablet, goes smaller as far as it must, down to 16,
// then takes a shorter form of the text, if it has one, and only then cuts.
func (p *Pen) Fit(s string, ink Ink, w, h float32) Laid { return p.fit(s, ink, w, h) }

func (p *Pen) fit(s string, ink Ink, w, h float32) (l Laid) {
	for _, f := range forms(s) {
		if l = p.fitForm(f, ink, w, h); !l.cut {
			break
		}
	}
	return l
}

func (p *Pen) fitForm(s string, ink Ink, w, h float32) Laid {
	if ink.Color == "" {
		ink.Color = look.Text
	}
	l := Laid{ink: ink, whole: s, size: p.Size(ink.Role)}
	if s == "" {
		return l
	}
	floor := look.Small.Base()
	if ink.Keep {
		floor = l.size
	}
	ps := pieces(s, ink.Role.Bold())
	width := func(n int) float32 { return w - ink.notch(n, l.pitch) }
	for {
		l.pitch = round(l.size * leading(ink.Role))
		n := ink.Lines
		if fits := int((h + l.pitch*0.1) / l.pitch); h > 0 && (n == 0 || fits < n) {
			n = max(fits, 1)
		}
		measure := rulerOf(l.size)
		lines, broke := wrap(ps, width, measure)
		if ink.Whole {
			together(lines, width, measure)
		}
		tooLong := n > 0 && len(lines) > n
		last := l.size-1 < floor
		if (!tooLong && !broke) || (last && !tooLong) {
			l.lines = lines
		} else if last {
			l.lines, l.cut = cutTo(lines, n, width, measure), true
		} else {
			l.size--
			continue
		}
		for _, ln := range l.lines {
			var lw float32
			for _, r := range ln {
				lw += measure(r.text, r.bold)
			}
			l.W = max(l.W, lw)
		}
		l.H = l.pitch * float32(len(l.lines))
		return l
	}
}

// Put draws a fitted text with its top left at x, y; w is the width that
// centred and trailing text is aligned in.
func (p *Pen) Put(l Laid, x, y, w float32) {
	if l.cut {
		p.cuts = append(p.cuts, Plain(l.whole))
	}
	c := look.Color(l.ink.Color)
	measure := rulerOf(l.size)
	for i, ln := range l.lines {
		ty, tx := y+float32(i)*l.pitch, x
		var lw float32
		for _, r := range ln {
			lw += measure(r.text, r.bold)
		}
		avail := w - l.ink.notch(i, l.pitch)
		switch l.ink.Align {
		case fyne.TextAlignCenter:
			tx += (avail - lw) / 2
		case fyne.TextAlignTrailing:
			tx += avail - lw
		}
		for _, r := range ln {
			style := fyne.TextStyle{Bold: r.bold}
			size := look.Measure(r.text, l.size, style)
			if p.t == len(p.texts) {
				p.texts = append(p.texts, canvas.NewText("", c))
			}
			o := p.texts[p.t]
			p.t++
			if o.Text != r.text || o.TextSize != l.size || o.TextStyle != style || o.Color != c {
				o.Text, o.TextSize, o.TextStyle, o.Color = r.text, l.size, style, c
				o.FontSource = look.Face(r.text, style)
				o.Refresh()
			}
			place(o, tx, ty+(l.pitch-size.Height)/2, size.Width, size.Height)
			p.add(o, inked{ink: l.ink.Color})
			tx += size.Width
		}
	}
}

// Write fits a text into a box and draws it from the box's top; it returns
// what was laid out.
func (p *Pen) Write(s string, ink Ink, x, y, w, h float32) Laid {
	l := p.fit(s, ink, w, h)
	p.Put(l, x, y, w)
	return l
}

// Middle fits a text into a box and draws it in the box's vertical middle.
func (p *Pen) Middle(s string, ink Ink, x, y, w, h float32) Laid {
	l := p.fit(s, ink, w, h)
	p.Put(l, x, y+(h-l.H)/2, w)
	return l
}

// Pair fits a title and a second line into one box. The title keeps its size
// as long as the second line, which may go down to 16, still finds room; a
// shorter form is taken only where no size has room, of the second line first.
func (p *Pen) Pair(title string, ti Ink, second string, si Ink, w, h float32) (a, b Laid) {
	for _, t := range forms(title) {
		for _, s := range forms(second) {
			if a, b = p.pair(t, ti, s, si, w, h); !a.cut && !b.cut {
				return a, b
			}
		}
	}
	return a, b
}

func (p *Pen) pair(title string, ti Ink, second string, si Ink, w, h float32) (a, b Laid) {
	if second == "" {
		return p.fit(title, ti, w, h), Laid{}
	}
	step := round(look.Small.Base() * leading(look.Small))
	for k := 1; k <= 4; k++ {
		room := h - float32(k)*step
		if room < step && k > 1 {
			break
		}
		ta := p.fit(title, ti, w, room)
		tb := p.fit(second, si, w, max(h-ta.H, 1))
		if k == 1 || !ta.cut {
			a, b = ta, tb
		}
		if ta.cut || !tb.cut {
			break
		}
	}
	return a, b
}

// crowded says whether texts and pictures lie over one another or stick out
// of the part.
func (p *Pen) crowded(size fyne.Size) bool {
	var boxes []rect
	for _, t := range p.texts[:p.t] {
		mid := t.Position().Y + t.Size().Height/2
		// From the top of the capitals to the line, or to what hangs under it.
		up, down := t.TextSize*0.34, t.TextSize*0.42
		if strings.ContainsAny(t.Text, "gjpqy") {
			down = t.TextSize * 0.58
		}
		boxes = append(boxes, rect{t.Position().X, mid - up, t.Position().X + t.Size().Width, mid + down})
	}
	for i, o := range p.images[:p.i] {
		if p.lies[i] {
			continue
		}
		b := rectOf(o.Position(), o.Size())
		in := o.Size().Width * 0.1
		boxes = append(boxes, rect{b.x0 + in, b.y0 + in, b.x1 - in, b.y1 - in})
	}
	for i, b := range boxes {
		if b.x0 < -1 || b.y0 < -1 || b.x1 > size.Width+1 || b.y1 > size.Height+1 {
			return true
		}
		for _, o := range boxes[:i] {
			if both := b.and(o); both.x1-both.x0 > 1 && both.y1-both.y0 > 1 {
				return true
			}
		}
	}
	return false
}

// Stack draws fitted texts under one another, centred in a height.
func (p *Pen) Stack(x, y, w, h float32, blocks ...Laid) {
	var total float32
	for _, b := range blocks {
		total += b.H
	}
	at := y + (h-total)/2
	for _, b := range blocks {
		p.Put(b, x, at, w)
		at += b.H
	}
}
