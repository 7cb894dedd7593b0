package parts

import (
	"fyne.io/fyne/v2"

	"tarpside/ui/look"
)

// MarkView is an owner mark in words: what is painted on a rig's tools.
type MarkView struct {
	Shape   string // circle, square, triangle, bars
	Colour  string // white, yellow, blue, orange, red, green
	Letters string // R41
}

// markLetters is how wide the letters of a mark may be, as a multiple of its size.
const markLetters = 4

// Mark draws the badge of an owner mark in a square and returns the width
// that it took. A shape that is not known gives the letters in a frame
// instead, which may be wider than high.
func (p *Pen) Mark(v MarkView, x, y, size float32) float32 {
	if res := look.MarkIcon(v.Shape, v.Colour); res != nil {
		p.Image(res, x, y, size, size)
		return size
	}
	if v.Letters == "" {
		return 0
	}
	l := p.fit(v.Letters, Ink{Role: look.SmallBold, Lines: 1}, size*markLetters, size)
	w := max(l.W+look.U(10), size)
	p.Rect(x, y, w, size, look.Ground, look.Edge, look.U(1), look.U(3))
	l.ink.Align = fyne.TextAlignCenter
	p.Put(l, x, y+(size-l.H)/2, w)
	return w
}

// MarkLetters draws a mark with the letters beside it and returns the width.
func (p *Pen) MarkLetters(v MarkView, role look.Role, x, y, size float32) float32 {
	w := p.Mark(v, x, y, size)
	if look.MarkIcon(v.Shape, v.Colour) == nil || v.Letters == "" {
		return w
	}
	gap := look.U(4)
	l := p.fit(v.Letters, Ink{Role: role, Lines: 1}, size*markLetters, size)
	p.Put(l, x+w+gap, y+(size-l.H)/2, l.W)
	return w + gap + l.W
}

// Mark is an owner mark as a part of its own: 22 in lists, 24 on tiles, 40 to
// 58 in headers.
type Mark struct {
	face
	view    MarkView
	letters bool
	size    float32
}

// NewMark makes a mark of a size in design pixels, with or without letters.
func NewMark(view MarkView, size float32, letters bool) *Mark {
	m := &Mark{view: view, size: size, letters: letters}
	w := size
	if letters {
		w = size * 2.6
	}
	m.init(m, w, size, func(p *Pen, _ fyne.Size) {
		px := look.U(m.size)
		if m.letters {
			role := look.Small
			if m.size >= 36 {
				role = look.TileName
			}
			p.MarkLetters(m.view, role, 0, 0, px)
		} else {
			p.Mark(m.view, 0, 0, px)
		}
	})
	return m
}

// Set changes the mark.
func (m *Mark) Set(view MarkView) {
	if m.view != view {
		m.view = view
		m.Refresh()
	}
}

// Swatch shows one colour of the balance, filled or as an outline.
type Swatch struct {
	face
	color   fyne.ThemeColorName
	outline bool
}

// NewSwatch makes a swatch of 12 by 12 design pixels.
func NewSwatch(color fyne.ThemeColorName, outline bool) *Swatch {
	s := &Swatch{color: color, outline: outline}
	s.init(s, 12, 12, func(p *Pen, size fyne.Size) {
		p.swatch(s.color, s.outline, 0, 0, min(size.Width, size.Height))
	})
	return s
}

func (p *Pen) swatch(color fyne.ThemeColorName, outline bool, x, y, size float32) {
	if outline {
		p.Rect(x, y, size, size, look.Clear, look.Dim, look.U(2), look.U(1))
		return
	}
	p.Rect(x, y, size, size, color, look.Clear, 0, look.U(1))
}
