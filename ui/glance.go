package ui

import (
	"fmt"
	"reflect"
	"slices"
	"strings"

	"fyne.io/fyne/v2"

	"tarpside/ui/look"
	"tarpside/ui/parts"
	"tarpside/ui/words"
)

// glanceScreen is one page for the officer: what is where, what runs down,
// what each rig could not do, what is free. Nothing on it changes stock.
type glanceScreen struct {
	sh    *Shell
	root  *fyne.Container
	aloud *parts.Key
	away  *parts.Key

	view   glanceView
	cells  int
	bands  []*reading[bandDrawn]
	foot   *reading[string] // places without room, and what is with others
	none   *reading[nothingDrawn]
	gauges *touchReading[gaugesDrawn]
	sent   *reading[[]sentDrawn]
	free   *reading[[]freeView]
	alert  *touchReading[alertView]
}

// sentDrawn is a rig and what it could not do.
type sentDrawn struct {
	Mark parts.MarkView
	View sentView
}

func newGlance(sh *Shell) screen {
	g := &glanceScreen{sh: sh}
	g.aloud = parts.NewKey(parts.KeyView{ID: "read-aloud", Title: words.L("Read\naloud"), Icon: "say", Tone: parts.Header},
		func() { sh.open(newAloud(sh, words.L("Glance"), (*now).aloudGlance)) })
	g.away = parts.NewKey(parts.KeyView{ID: "rig-leaving", Title: words.L("Rig\nleaving"), Icon: "leave", Tone: parts.Header}, sh.rigLeaving)
	g.foot = newReading(paintGlanceFoot)
	g.none = newReading(paintNothingOut)
	g.gauges = newGaugePanel(func() { sh.open(newRunning(sh, g.gauges.view.first())) })
	g.sent = newReading(paintSent)
	g.free = newReading(paintFree)
	g.alert = newAlertLine(g.openAlert)
	g.root = box(g.layout)
	return g
}

func (g *glanceScreen) body() fyne.CanvasObject { return g.root }

func (g *glanceScreen) show(n *now) head {
	v := n.glance(g.freeRoom())
	if !reflect.DeepEqual(v, g.view) || len(g.root.Objects) == 0 {
		g.view = v
		g.fill(n)
		relay(g.root)
	}
	return head{title: words.L("Glance"), sentence: v.Sentence, stale: n.stale(), middle: []fyne.CanvasObject{g.aloud, g.away}, widths: []float32{152, 152}, gap: 8}
}

// fill gives every part what it shows. The bands are filled by the layout,
// which knows how many names each has room for.
func (g *glanceScreen) fill(n *now) {
	v := &g.view
	g.gauges.set(gaugesDrawn{v.Gauges, v.Unread}, "gauges", gaugeWords(v.Gauges, v.Unread))
	var sent []sentDrawn
	var said []string
	for _, s := range v.Sent {
		sent = append(sent, sentDrawn{n.mark(s.Rig), s})
		said = append(said, s.Name+": "+s.whole())
	}
	g.sent.set(sent, "if-sent-now", strings.Join(said, " "))
	var free []string
	for _, f := range append(slices.Clone(v.Free), v.Also...) {
		free = append(free, fmt.Sprintf("%d %s", f.Count, low(f.Name)))
	}
	g.free.set(v.Free, "free-now", words.F("Free now: %s", strings.Join(free, ", ")))
	g.alert.set(v.Alert, "alert", v.Alert.words())
	for len(g.bands) < len(v.Bands) {
		g.bands = append(g.bands, newReading(paintBand))
	}
	g.root.Objects = []fyne.CanvasObject{g.free.obj, g.gauges, g.sent.obj}
	if len(v.Bands) == 0 {
		g.root.Objects = append(g.root.Objects, g.none.obj)
	}
	for i := range v.Bands {
		g.root.Objects = append(g.root.Objects, g.bands[i].obj)
	}
	g.root.Objects = append(g.root.Objects, g.foot.obj)
	if v.Alert.Text != "" {
		g.root.Objects = append(g.root.Objects, g.alert)
	}
}

// Sizes of Glance in design pixels.
const (
	glanceRight = 356 // the panels at the right
	glanceFree  = 138 // the strip at the foot
	glanceAlert = 40
	freeCell    = 118
	freeTitle   = 92
)

// freeRoom is how many families have room at the foot.
func (g *glanceScreen) freeRoom() int {
	w := design(g.root.Size().Width)
	if w < 10 {
		return 9
	}
	return max(4, int((w-freeTitle)/freeCell))
}

func (g *glanceScreen) layout(size fyne.Size) {
	if cells := g.freeRoom(); cells != g.cells {
		g.cells = cells
		n := g.sh.now()
		g.view = n.glance(cells)
		g.fill(n)
	}
	gap := look.U(look.Gap)
	freeH := look.U(glanceFree)
	place(g.free.obj, 0, size.Height-freeH, size.Width, freeH)
	h := size.Height - freeH
	if g.view.Alert.Text != "" {
		h -= look.U(glanceAlert) + gap
		over := look.U(look.Floor-glanceAlert) / 2
		place(g.alert, 0, h+gap-over, size.Width, look.U(look.Floor))
	}
	right := look.U(glanceRight)
	if size.Width < look.U(1000) {
		right = look.U(310)
	}
	g.layRight(size.Width-right, right, h)
	left := size.Width - right - 2*gap
	g.layBands(left, h)
}

// layRight gives the readings what the rigs leave over.
func (g *glanceScreen) layRight(x, w, h float32) {
	row := look.U(78)
	head := look.U(36)
	sent := head + row*float32(len(g.view.Sent))
	sent = min(sent, h*0.62)
	place(g.gauges, x, 0, w, h-sent)
	place(g.sent.obj, x, h-sent, w, sent)
}

// layBands lays the places out over one another. Places for which there is
// no height are counted in the line below.
func (g *glanceScreen) layBands(w, h float32) {
	bands := g.view.Bands
	foot := ""
	if g.view.Away != "" {
		foot = words.F("Elsewhere: %s", g.view.Away)
	}
	footH := look.U(30)
	shown := len(bands)
	for shown > 1 && look.U(bandLeast)*float32(shown)+footH > h {
		shown--
	}
	for _, b := range bands[shown:] {
		foot = strings.TrimSuffix(words.F("Also %s, %s.", b.Name, words.N("%d line", "%d lines", b.Lines))+" "+foot, " ")
		g.bands[slices.IndexFunc(bands, func(x bandView) bool { return x.Place == b.Place })].obj.Hide()
	}
	switch text := look.Measure(foot, look.Body.Base(), look.Body.Style()).Width; {
	case foot == "":
		footH = 0
	case text > w-look.U(16):
		footH = look.U(54)
	}
	draws, left := shareRows(bands[:shown], w-look.U(bandTitle), h-footH)
	y := float32(0)
	for i := range draws {
		g.bands[i].obj.Show()
		bh := draws[i].height() + min(left/float32(shown), look.U(12))
		place(g.bands[i].obj, 0, y, w, bh)
		draws[i].Last = i == shown-1
		g.bands[i].set(draws[i], bands[i].Place, bands[i].words())
		y += bh
	}
	g.foot.set(foot, "elsewhere", foot)
	g.layNothing(fyne.NewSize(w, h-footH))
	place(g.foot.obj, 0, h-footH, w, footH)
}

// layNothing shows, while nothing is out, what there is to take out.
func (g *glanceScreen) layNothing(size fyne.Size) {
	place(g.none.obj, 0, 0, size.Width, size.Height)
	v := nothingDrawn{More: words.L(nothingOutMore)}
	if g.view.Away != "" {
		v.More = words.L(nothingHere)
	}
	cols, rows := freeRows(size)
	v.Free = g.view.Also[:min(len(g.view.Also), cols*rows)]
	g.none.set(v, "nothing-out", words.L(nothingOut)+". "+v.More)
}

// shareRows shares the height out: each place gets a row of names, the rest
// goes to those with the most key pieces not yet named. It returns what is
// left over.
func shareRows(bands []bandView, w, h float32) (draws []bandDrawn, left float32) {
	rows := make([]int, len(bands))
	draws = make([]bandDrawn, len(bands))
	left = h
	for i := range rows {
		rows[i] = 1
		draws[i] = flow(bands[i], w, 1)
		left -= draws[i].height()
	}
	for {
		best := -1
		for i := range rows {
			if draws[i].hidden == 0 || best >= 0 && draws[i].want() <= draws[best].want() {
				continue
			}
			if next := flow(bands[i], w, rows[i]+1); next.height()-draws[i].height() <= left {
				best = i
			}
		}
		if best < 0 {
			return draws, left
		}
		left += draws[best].height()
		rows[best]++
		draws[best] = flow(bands[best], w, rows[best])
		left -= draws[best].height()
	}
}
