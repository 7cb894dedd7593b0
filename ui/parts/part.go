package parts

import (
	"bytes"
	"encoding/json"
	"fmt"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
)

// The kinds of part in the parts file.
const (
	KindScreen   = "screen" // navigation
	KindRig      = "rig"
	KindPiece    = "piece"
	KindPlace    = "place"
	KindMember   = "member"
	KindQuantity = "quantity" // handful keys
	KindDigit    = "digit"
	KindAnswer   = "answer" // id CHECK=yes or CHECK=no
	KindDoor     = "door"
	KindSlot     = "slot"
	KindAct      = "act"  // ids are plain verbs
	KindText     = "text" // lines for reading: proof, reply, last, alert
)

// Part is one thing on screen as a finger or an eye finds it, in pixels of
// the window. A part without a kind is not listed.
type Part struct {
	Kind  string `json:"part"`
	ID    string `json:"id"`
	Text  string `json:"text"`
	State string `json:"state"`
	X     int    `json:"x"`
	Y     int    `json:"y"`
	W     int    `json:"w"`
	H     int    `json:"h"`
}

type lister interface{ Part() Part }

type holder interface{ Inside() []fyne.CanvasObject }

type coverer interface{ Covers() bool }

// inside lists what lies in an object, in the order it is drawn. It knows our
// own parts and the toolkit's plain containers.
func inside(o fyne.CanvasObject) []fyne.CanvasObject {
	switch c := o.(type) {
	case *fyne.Container:
		return c.Objects
	case holder:
		return c.Inside()
	case *container.Scroll:
		return []fyne.CanvasObject{c.Content}
	case *container.ThemeOverride:
		return []fyne.CanvasObject{c.Content}
	case *container.Clip:
		return []fyne.CanvasObject{c.Content}
	}
	return nil
}

type rect struct{ x0, y0, x1, y1 float32 }

func rectOf(p fyne.Position, s fyne.Size) rect {
	return rect{p.X, p.Y, p.X + s.Width, p.Y + s.Height}
}

func (r rect) and(o rect) rect {
	return rect{max(r.x0, o.x0), max(r.y0, o.y0), min(r.x1, o.x1), min(r.y1, o.y1)}
}

func (r rect) empty() bool { return r.x1 <= r.x0 || r.y1 <= r.y0 }

func (r rect) has(x, y float32) bool { return x >= r.x0 && x < r.x1 && y >= r.y0 && y < r.y1 }

// placed visits what is visible, parents before children, with its place in
// the window and the room that the viewports around it leave.
func placed(o fyne.CanvasObject, at fyne.Position, clip rect, visit func(o fyne.CanvasObject, at fyne.Position, clip rect)) {
	if o == nil || !o.Visible() {
		return
	}
	at = at.Add(o.Position())
	if _, ok := o.(fyne.Scrollable); ok {
		clip = clip.and(rectOf(at, o.Size()))
	}
	visit(o, at, clip)
	for _, child := range inside(o) {
		placed(child, at, clip, visit)
	}
}

// walk visits what is visible with what is in view of it.
func walk(o fyne.CanvasObject, at fyne.Position, clip rect, visit func(o fyne.CanvasObject, seen rect)) {
	placed(o, at, clip, func(o fyne.CanvasObject, at fyne.Position, clip rect) {
		visit(o, rectOf(at, o.Size()).and(clip))
	})
}

// entry is a part while it is looked for, or something that lies over parts.
type entry struct {
	part   Part
	seen   rect
	whole  fyne.Size
	touch  bool
	covers bool
}

// least is how much of a part must show for it to be listed, in pixels.
const least = 12

// Collect lists the parts that are on screen in a canvas: laid out, visible,
// inside the viewport of what they scroll in, and not covered. While anything
// lies in the overlay of the canvas, only that is listed, because only that
// can be touched.
func Collect(c fyne.Canvas) []Part {
	root := c.Content()
	if top := c.Overlays().Top(); top != nil {
		root = top
	}
	return collect(root, c.Size(), c.Scale())
}

// CollectIn lists the parts of an object tree as if it filled a window of
// that size at scale 1.
func CollectIn(root fyne.CanvasObject, size fyne.Size) []Part { return collect(root, size, 1) }

func collect(root fyne.CanvasObject, size fyne.Size, scale float32) []Part {
	out := []Part{}
	for _, e := range gather(root, size, scale) {
		out = append(out, e.part)
	}
	return out
}

// Target is a part that can be touched. Its place is what is in view of it.
type Target struct {
	Part
	Whole fyne.Size // with what is scrolled out of view
}

// Targets lists the parts that a finger can touch in an object tree, as if it
// filled a window of that size at scale 1.
func Targets(root fyne.CanvasObject, size fyne.Size) []Target {
	var out []Target
	for _, e := range gather(root, size, 1) {
		if e.touch && e.part.Kind != KindText {
			out = append(out, Target{e.part, e.whole})
		}
	}
	return out
}

// gather finds what is listed, each part with its place.
func gather(root fyne.CanvasObject, size fyne.Size, scale float32) []entry {
	var found []entry
	walk(root, fyne.Position{}, rectOf(fyne.Position{}, size), func(o fyne.CanvasObject, seen rect) {
		if seen.empty() {
			return
		}
		e := entry{seen: seen, whole: o.Size()}
		_, e.touch = o.(fyne.Tappable)
		if c, ok := o.(coverer); ok && c.Covers() {
			e.covers = true
		}
		if l, ok := o.(lister); ok {
			e.part = l.Part()
		}
		if _, ok := o.(backdrop); ok {
			e.touch = false
		}
		clear, _ := o.(*Shield)
		if clear != nil && clear.clear {
			e.touch = true
		}
		if e.part.Kind != "" || e.covers || e.touch && clear != nil {
			found = append(found, e)
		}
	})
	var out []entry
	for i, e := range found {
		if e.part.Kind == "" || hidden(e, found[i+1:]) {
			continue
		}
		p := &e.part
		p.Text = Plain(p.Text)
		p.X, p.Y = int(round(e.seen.x0*scale)), int(round(e.seen.y0*scale))
		p.W, p.H = int(round(e.seen.x1*scale))-p.X, int(round(e.seen.y1*scale))-p.Y
		out = append(out, e)
	}
	return out
}

// hidden says whether the middle of a part lies under something drawn later:
// a cover hides all, a target hides targets.
func hidden(e entry, later []entry) bool {
	if e.seen.x1-e.seen.x0 < least || e.seen.y1-e.seen.y0 < least {
		return true
	}
	x, y := (e.seen.x0+e.seen.x1)/2, (e.seen.y0+e.seen.y1)/2
	for _, o := range later {
		if o.seen.has(x, y) && (o.covers || o.touch && e.touch) {
			return true
		}
	}
	return false
}

// Cuts lists every text in a tree that was cut at its last drawing.
func Cuts(root fyne.CanvasObject) []string {
	var out []string
	all := rect{-1e9, -1e9, 1e9, 1e9}
	walk(root, fyne.Position{}, all, func(o fyne.CanvasObject, _ rect) {
		if c, ok := o.(interface{ Cut() []string }); ok {
			out = append(out, c.Cut()...)
		}
	})
	return out
}

// Scrolls is what a finger can scroll: a [Scroller], a [Grid].
type Scrolls interface {
	fyne.CanvasObject
	// ScrollBy moves the content up by so many pixels, as far as it goes.
	ScrollBy(dy float32)
}

// enclosing finds the nearest thing that scrolls around an object, or nil.
func enclosing(target fyne.CanvasObject) Scrolls {
	c := fyne.CurrentApp().Driver().CanvasForObject(target)
	if c == nil {
		return nil
	}
	var found Scrolls
	var search func(o fyne.CanvasObject, around Scrolls) bool
	search = func(o fyne.CanvasObject, around Scrolls) bool {
		if o == nil || !o.Visible() {
			return false
		}
		if o == target {
			found = around
			return true
		}
		if s, ok := o.(Scrolls); ok {
			around = s
		}
		for _, child := range inside(o) {
			if search(child, around) {
				return true
			}
		}
		return false
	}
	for _, o := range c.Overlays().List() {
		if search(o, nil) {
			return found
		}
	}
	search(c.Content(), nil)
	return found
}

// Registry keeps the parts file: after each change of what is drawn the window
// publishes the parts, and the file is replaced whole. The files themselves
// are touched only through the two functions it is given.
type Registry struct {
	Path      string
	WriteFile func(name string, data []byte) error
	Rename    func(from, to string) error

	last []byte
}

// Publish replaces the file if the parts differ from those published last.
func (r *Registry) Publish(parts []Part) error {
	data, err := EncodeParts(parts)
	if err != nil {
		return err
	}
	if r.last != nil && bytes.Equal(data, r.last) {
		return nil
	}
	fresh := r.Path + ".new"
	if err := r.WriteFile(fresh, data); err != nil {
		return fmt.Errorf("parts file: %w", err)
	}
	if err := r.Rename(fresh, r.Path); err != nil {
		return fmt.Errorf("parts file: %w", err)
	}
	r.last = data
	return nil
}

// EncodeParts gives the parts as one JSON array, one part a line.
func EncodeParts(parts []Part) ([]byte, error) {
	var b bytes.Buffer
	b.WriteByte('[')
	for i, p := range parts {
		if i > 0 {
			b.WriteByte(',')
		}
		b.WriteByte('\n')
		line, err := json.Marshal(p)
		if err != nil {
			return nil, fmt.Errorf("parts file: %w", err)
		}
		b.Write(line)
	}
	b.WriteString("\n]\n")
	return b.Bytes(), nil
}
