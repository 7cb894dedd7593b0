package ui

import (
	"reflect"
	"strings"

	"fyne.io/fyne/v2"

	"tarpside/ui/look"
	"tarpside/ui/parts"
)

// reading is a part for reading that draws a value; an equal value is not
// drawn again.
type reading[T any] struct {
	obj  *parts.Drawn
	view T
	part parts.Part
}

func newReading[T any](paint func(v *T, p *parts.Pen, size fyne.Size)) *reading[T] {
	r := &reading[T]{}
	r.obj = parts.NewDrawn(parts.Part{}, look.Floor, 24, func(p *parts.Pen, size fyne.Size) { paint(&r.view, p, size) })
	return r
}

// set shows another value, listed under an id with its words.
func (r *reading[T]) set(v T, id, text string) {
	part := parts.Part{Kind: parts.KindText, ID: id, Text: text}
	if reflect.DeepEqual(r.view, v) && r.part == part {
		return
	}
	r.view, r.part = v, part
	r.obj.SetPart(part)
	r.obj.Refresh()
}

// A touchReading is a reading that can be touched: what is drawn may be less
// than what is touched.
type touchReading[T any] struct {
	*parts.Touch
	view T
}

// newTouchReading makes one that wants so much width and height at least, in
// design pixels.
func newTouchReading[T any](wide, high float32, paint func(v *T, p *parts.Pen, size fyne.Size), touched func()) *touchReading[T] {
	r := &touchReading[T]{}
	r.Touch = parts.NewTouch(parts.Part{}, wide, high, func(p *parts.Pen, size fyne.Size) { paint(&r.view, p, size) }, touched)
	return r
}

// set shows another value, listed under an id with its words.
func (r *touchReading[T]) set(v T, id, text string) {
	part := parts.Part{Kind: parts.KindAct, ID: id, Text: text}
	if reflect.DeepEqual(r.view, v) && r.Part() == part {
		return
	}
	r.view = v
	r.SetPart(part)
	r.Refresh()
}

// fitsOn tells whether a text needs no more than so many lines of a width.
func fitsOn(p *parts.Pen, s string, role look.Role, w float32, lines int) bool {
	one := p.Fit("x", parts.Ink{Role: role, Keep: true}, 1e5, 0).H
	return p.Fit(s, parts.Ink{Role: role, Keep: true}, w, 0).H <= one*float32(lines)+1
}

// longest is the wording with the most names that still fits. say makes the
// words with k names.
func longest(p *parts.Pen, most int, role look.Role, w float32, lines int, say func(k int) string) string {
	for k := most; k > 0; k-- {
		if s := say(k); fitsOn(p, s, role, w, lines) {
			return s
		}
	}
	return say(0)
}

// sentences joins what stands in several parts for one that is read whole.
func sentences(texts ...string) string {
	var out []string
	for _, t := range texts {
		if t != "" {
			out = append(out, strings.TrimSuffix(t, "."))
		}
	}
	return strings.Join(out, ". ")
}

// design turns pixels of the glass into design pixels.
func design(px float32) float32 { return px * 100 / look.U(100) }
