package parts

import (
	"fyne.io/fyne/v2"

	"tarpside/ui/look"
	"tarpside/ui/words"
)

// TileState is the one thing about a piece that a tile shows with an icon at
// the top right and a word at the bottom right.
type TileState string

// The states of a tile.
const (
	TileRest      TileState = ""
	TileTagged    TileState = "tagged"
	TileRunning   TileState = "running"   // running down: battery, oxygen
	TileOverdue   TileState = "overdue"   // out longer than it should be
	TileContested TileState = "contested" // two places claimed
	TileBlocked   TileState = "blocked"
	TileKit       TileState = "kit"
	TileKitOpen   TileState = "kit-open" // a piece of it is out
	TileShort     TileState = "short"    // not all of it came back
	TileTwo       TileState = "two"      // two people to lift
	TileBagged    TileState = "bagged"
	TileCharging  TileState = "charging"
	TileWith      TileState = "with"    // out of the box: with an agency
	TileCarried   TileState = "carried" // rides on a rig that does not own it
	TileUnknown   TileState = "unknown" // nobody knows whose it is
	TileLost      TileState = "lost"
	TileLooked    TileState = "looked" // being looked for
	TileEmpty     TileState = "empty"  // no piece: a sentence in its place
	TileAct       TileState = "act"    // no piece: Find, or "4 more"
)

var tileIcon = map[TileState]string{
	TileTagged: "tag", TileRunning: "hourglass", TileOverdue: "clock", TileContested: "fork",
	TileBlocked: "bar", TileKitOpen: "kit", TileShort: "look", TileTwo: "two", TileBagged: "bag",
	TileCharging: "plug", TileWith: "with", TileCarried: "carried", TileUnknown: "warn",
	TileLost: "lost", TileLooked: "look",
}

// TileView is one piece, or one line of like pieces, on a tile.
type TileView struct {
	Kind   string // of part; nothing means piece
	ID     string
	Name   string // two or three lines; a soft hyphen shows where it may break
	Mark   MarkView
	Figure string // how many, only for counted lines
	State  TileState
	Word   string // state word or figure: "tagged", "22 %", "L1", "V1? V2?"
	Second string // under the name; nothing means "picked" on a picked tile
	Icon   string // instead of the state's own
	Picked bool
	Raised bool   // still on the rig
	Off    bool   // cannot be touched now
	Listed string // the state in the parts file, such as the place it is at
}

// Tile is a piece to be touched.
type Tile struct {
	Touch
	view TileView
	// OnPick is called with the view of the moment when the tile is touched.
	OnPick func(TileView)
}

// NewTile makes a tile; onPick may be nil.
func NewTile(view TileView, onPick func(TileView)) *Tile {
	t := &Tile{OnPick: onPick}
	t.OnTap = func() {
		if t.OnPick != nil {
			t.OnPick(t.view)
		}
	}
	t.touch(t, look.TileW, look.TileH, t.draw)
	t.radius = look.RadiusTile
	t.take(view)
	return t
}

// Set shows another view.
func (t *Tile) Set(view TileView) {
	if t.view != view {
		t.take(view)
		t.Refresh()
	}
}

// View is what the tile shows.
func (t *Tile) View() TileView { return t.view }

func (t *Tile) take(v TileView) {
	t.view = v
	t.off = v.Off || v.State == TileEmpty
	kind, state := v.Kind, v.Listed
	switch {
	case v.State == TileEmpty:
		kind = KindText
	case kind == "" && v.State == TileAct:
		kind = KindAct
	case kind == "":
		kind = KindPiece
	}
	if state == "" && v.Picked {
		state = "picked"
	}
	if state == "" && v.State != TileAct {
		state = string(v.State)
	}
	t.part = Part{Kind: kind, ID: v.ID, Text: v.Name, State: state}
}

func (t *Tile) draw(p *Pen, size fyne.Size) {
	v := t.view
	switch v.State {
	case TileEmpty:
		p.Rect(0, 0, size.Width, size.Height, look.Ground, look.Line, look.U(1), look.U(look.RadiusTile))
		in := look.U(look.InsetTile + 2)
		p.Write(v.Name, Ink{Role: look.Body}, in, look.U(7), size.Width-2*in, size.Height-look.U(14))
		return
	case TileAct:
		t.drawAct(p, size)
		return
	}
	ground, edge, width := look.Surface, look.Edge, look.U(1)
	if v.Raised {
		ground = look.Raised
	}
	if v.Picked {
		ground, edge, width = look.Soft, look.Accent, look.U(2)
	}
	p.Rect(0, 0, size.Width, size.Height, ground, edge, width, look.U(look.RadiusTile))
	second := v.Second
	if second == "" && v.Picked {
		second = words.L("picked")
	}
	if second == "" || t.under(p, second, size) {
		foot := t.drawFoot(p, size, v.Word, Ink{Role: look.Small, Lines: 1})
		t.drawName(p, size, size.Height-foot, second)
		return
	}
	word, ink := second, Ink{Role: look.SmallBold, Color: v.underInk(), Lines: 1}
	if v.Second == "" && v.Word != "" { // ground and edge say picked as well
		word, ink = v.Word, Ink{Role: look.Small, Lines: 1}
	}
	foot := t.drawFoot(p, size, word, ink)
	t.drawName(p, size, size.Height-foot, "")
}

// under tells whether a second line has room between the name and the foot, or
// none in the foot either. On a low tile it goes to the foot.
func (t *Tile) under(p *Pen, second string, size fyne.Size) bool {
	w := size.Width - 2*look.U(look.InsetTile)
	ink := t.nameInk(p)
	ink.Lines = 2
	name := p.fit(t.view.Name, ink, w+look.U(4), 0)
	line := p.fit(second, Ink{Role: look.SmallBold, Lines: 2}, w, 0)
	short := p.fit(second, Ink{Role: look.SmallBold, Lines: 1}, 1e4, 0).W
	if mark := p.Size(look.Small) * 1.5; short > w-mark-look.U(10) {
		return true
	}
	return look.U(6)+name.H+line.H <= size.Height-t.footHigh(p)-look.U(2)
}

// underInk is the colour of the second line.
func (v TileView) underInk() fyne.ThemeColorName {
	if v.Picked {
		return look.Accent
	}
	return look.Text
}

// footHigh is the height of the foot.
func (t *Tile) footHigh(p *Pen) float32 { return p.Size(look.Small)*1.5 + look.U(9) }

// nameInk is how the name is set: beside the icon, where there is one.
func (t *Tile) nameInk(p *Pen) Ink {
	ink := Ink{Role: look.TileName, Whole: true}
	if t.icon() != "" {
		side := p.Size(look.TileName) * 1.1
		ink.First, ink.Deep = side+look.U(4), side+look.U(1)
	}
	return ink
}

func (t *Tile) icon() string {
	if t.view.Icon != "" {
		return t.view.Icon
	}
	return tileIcon[t.view.State]
}

// drawFoot draws mark, word and figure along the bottom; it returns the
// height that this took.
func (t *Tile) drawFoot(p *Pen, size fyne.Size, text string, ink Ink) float32 {
	v, in := t.view, look.U(look.InsetTile)
	mark := p.Size(look.Small) * 1.5
	h := t.footHigh(p)
	y := size.Height - h
	x, right := in+look.U(1), size.Width-in+look.U(2)
	fig := p.fit(v.Figure, Ink{Role: look.Title, Lines: 1}, right-x, 0)
	gap := look.U(5)
	room := right - x
	if fig.W > 0 {
		room -= fig.W + gap
	}
	// Letters, shape and colour each suffice alone: where the word needs the
	// room the letters go, and where even that is not enough the word gets a
	// line of its own.
	letters := t.markWidth(p, mark)
	var word Laid
	for _, f := range forms(text) { // a shorter word rather than no letters
		if word = p.fit(f, ink, right-x, 0); letters+gap+word.W <= room {
			break
		}
	}
	bare := mark
	if look.MarkIcon(v.Mark.Shape, v.Mark.Colour) == nil {
		bare = letters
	}
	switch {
	case v.Mark == (MarkView{}):
	case letters+gap+word.W <= room || word.W == 0:
		p.MarkLetters(v.Mark, look.Small, x, y, mark)
	case bare+gap+word.W <= room:
		p.Mark(v.Mark, x, y, mark)
	default:
		p.MarkLetters(v.Mark, look.Small, x, y, mark)
		p.Put(fig, right-fig.W, y+(mark-fig.H)/2, fig.W)
		p.Put(word, x, y-word.H, word.W)
		return h + word.H
	}
	p.Put(fig, right-fig.W, y+(mark-fig.H)/2, fig.W)
	at := x + room - word.W
	if v.Mark == (MarkView{}) && v.Figure == "" {
		at = x
	}
	p.Put(word, at, y+(mark-word.H)/2, word.W)
	return h
}

// markWidth is the width of the mark with its letters.
func (t *Tile) markWidth(p *Pen, size float32) float32 {
	v := t.view.Mark
	if look.MarkIcon(v.Shape, v.Colour) == nil {
		l := p.fit(v.Letters, Ink{Role: look.SmallBold, Lines: 1}, size*markLetters, size)
		return max(l.W+look.U(10), size)
	}
	l := p.fit(v.Letters, Ink{Role: look.Small, Lines: 1}, size*markLetters, size)
	return size + look.U(4) + l.W
}

func (t *Tile) drawName(p *Pen, size fyne.Size, bottom float32, second string) {
	v, in := t.view, look.U(look.InsetTile)
	top := look.U(6)
	room := bottom - top
	var under Laid
	if second != "" {
		under = p.fit(second, Ink{Role: look.SmallBold, Color: v.underInk(), Lines: 2}, size.Width-2*in, 0)
		room -= under.H
	}
	if icon := t.icon(); icon != "" {
		side := p.Size(look.TileName) * 1.1
		p.Icon(icon, look.Text, size.Width-side-look.U(5), look.U(7), side)
	}
	name := p.Write(v.Name, t.nameInk(p), in+look.U(1), top, size.Width-in-look.U(4), room)
	if second != "" {
		p.Put(under, in+look.U(1), top+name.H, size.Width-2*in)
	}
}

// drawAct draws what is no piece but stands among them.
func (t *Tile) drawAct(p *Pen, size fyne.Size) {
	v := t.view
	ground, edge := look.Raised, look.KeyEdge
	if v.Off {
		ground, edge = look.Ground, look.Line
	}
	p.Rect(0, 0, size.Width, size.Height, ground, edge, look.U(1), look.U(look.RadiusTile+2))
	in := look.U(6)
	w := size.Width - 2*in
	mid := fyne.TextAlignCenter
	var all []Laid
	if v.Figure != "" {
		all = append(all, p.fit(v.Figure, Ink{Role: look.Place, Align: mid, Lines: 1}, w, 0))
	}
	all = append(all, p.fit(v.Name, Ink{Role: look.TileName, Align: mid, Lines: 2}, w, 0))
	if v.Word != "" {
		all = append(all, p.fit(v.Word, Ink{Role: look.Small, Align: mid, Lines: 1}, w, 0))
	}
	var total float32
	for _, l := range all {
		total += l.H
	}
	side := float32(0)
	if v.Icon != "" {
		side = min(look.U(36), size.Height-total-look.U(10))
		if v.Figure != "" {
			side = min(look.U(22), side)
		}
	}
	y := (size.Height - total - side) / 2
	if v.Figure == "" && side > 0 {
		p.Icon(v.Icon, look.Text, (size.Width-side)/2, y, side)
		y += side
	}
	for _, l := range all {
		p.Put(l, in, y, w)
		y += l.H
	}
	if v.Figure != "" && side > 0 {
		p.Icon(v.Icon, look.Text, (size.Width-side)/2, y, side)
	}
}
