package parts

import (
	"fmt"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"tarpside/ui/look"
)

// Story is one picture of the gallery: a part in its states, at a size.
type Story struct {
	Name  string
	Size  fyne.Size
	Build func() fyne.CanvasObject
	// Cuts is how many texts this story is there to cut, to show how that
	// looks. Any other number is a fault.
	Cuts int
}

// Stories lists every part in every state.
func Stories() []Story {
	return []Story{
		{"Icons", fyne.NewSize(960, 560), iconStory, 0},
		{"Marks", fyne.NewSize(900, 200), markStory, 0},
		{"Type", fyne.NewSize(900, 720), typeStory, 0},
		{"Tiles, every state", fyne.NewSize(1280, 560), tileStory, 0},
		{"Tiles, long names", fyne.NewSize(920, 420), longTileStory, 1},
		{"Tiles, a page of many", fyne.NewSize(920, 411), pageStory, 0},
		{"Tiles, scrolled", fyne.NewSize(920, 411), scrollStory, 0},
		{"Places", fyne.NewSize(560, 640), placeStory, 0},
		{"Rail and header", fyne.NewSize(1280, 744), frameStory, 0},
		{"Keys", fyne.NewSize(1180, 640), keyStory, 0},
		{"Handful", fyne.NewSize(920, 128), handfulStory, 0},
		{"Hold keys", fyne.NewSize(1180, 420), holdStory, 0},
		{"Digit pad", fyne.NewSize(520, 500), digitStory, 0},
		{"Letter pad", fyne.NewSize(1168, 420), letterStory, 0},
		{"Answers", fyne.NewSize(520, 400), answerStory, 0},
		{"Rig unrolled", fyne.NewSize(1168, 150), rigStory, 0},
		{"Slots, cut from door to door", fyne.NewSize(620, 500), slotStory, 0},
		{"Slots, eyes on each", fyne.NewSize(640, 430), sweepStory, 0},
		{"Strips", fyne.NewSize(1240, 680), stripStory, 1},
		{"Foot", fyne.NewSize(1280, 360), footStory, 0},
		{"Foot, narrow", fyne.NewSize(1024, 240), footStory, 0},
		{"Panels", fyne.NewSize(1180, 500), panelStory, 0},
		{"Rows", fyne.NewSize(1180, 660), rowStory, 0},
	}
}

var (
	r41 = MarkView{"circle", "white", "R41"}
	e42 = MarkView{"square", "yellow", "E42"}
	s44 = MarkView{"triangle", "blue", "S44"}
	p71 = MarkView{"bars", "orange", "P71"}
)

// page is the ground that a story lies on.
type page struct {
	objs []fyne.CanvasObject
}

func (g *page) at(x, y, w, h float32, o fyne.CanvasObject) {
	o.Move(fyne.NewPos(look.U(x), look.U(y)))
	o.Resize(fyne.NewSize(look.U(w), look.U(h)))
	g.objs = append(g.objs, o)
}

func (g *page) done() fyne.CanvasObject {
	ground := NewDrawn(Part{}, 0, 0, func(p *Pen, size fyne.Size) {
		p.Fill(0, 0, size.Width, size.Height, look.Ground)
	})
	return container.NewStack(ground, container.NewWithoutLayout(g.objs...))
}

func (g *page) say(x, y, w float32, text string) {
	g.at(x, y, w, 22, NewLabel(LabelView{Text: text, Role: look.Small, Color: look.Dim}))
}

func iconStory() fyne.CanvasObject {
	g := &page{}
	for i, name := range look.Icons() {
		x, y := float32(i%10)*96, float32(i/10)*92
		g.at(x+4, y+4, 90, 86, NewDrawn(Part{}, 82, 86, func(p *Pen, size fyne.Size) {
			p.Icon(name, look.Text, look.U(8), look.U(6), look.U(40))
			p.Icon(name, look.Accent, look.U(54), look.U(20), look.U(24))
			p.Write(name, Ink{Role: look.Small, Align: fyne.TextAlignCenter, Lines: 1}, 0, look.U(58), size.Width, 0)
		}))
	}
	return g.done()
}

func markStory() fyne.CanvasObject {
	g := &page{}
	all := []MarkView{r41, e42, s44, p71, {"diamond", "red", "M15"}, {"circle", "red", "T9"}, {"square", "green", "HZ2"}}
	for i, m := range all {
		x := float32(i)*126 + 10
		g.at(x, 10, 58, 58, NewMark(m, 58, false))
		g.at(x, 80, 110, 40, NewMark(m, 40, true))
		g.at(x, 132, 80, 24, NewMark(m, 24, true))
		g.at(x, 166, 60, 22, NewMark(m, 22, true))
	}
	g.at(880, 10, 12, 12, NewSwatch(look.Accent, false))
	g.at(880, 30, 12, 12, NewSwatch(look.Accent, true))
	return g.done()
}

func typeStory() fyne.CanvasObject {
	var objs []fyne.CanvasObject
	for r := look.Small; r <= look.Figure; r++ {
		objs = append(objs, NewLabel(LabelView{Text: "Medium strut 1, 20:55", Role: r}))
	}
	left := NewColumn(2, objs...)
	right := NewColumn(12,
		NewLines(LabelView{Role: look.Sentence, Text: "Left end closed by the " + B("crate") + ", right end by the " + B("winch crate") + "."}),
		NewLines(LabelView{Role: look.Body, Text: "Chain saw, life-safety rope 1, lantern 1, oxygen in case 600 psi, oxygen spare 700 psi"}),
		NewLines(LabelView{Role: look.TileName, Text: "Recipro\u00adcating saw 1 and the Antidisestablishmentarianism-long word"}),
		NewLines(LabelView{Role: look.Body, Color: look.Dim, Align: fyne.TextAlignTrailing, Text: "quiet, from the right,\ntwo lines by hand"}),
		NewLines(LabelView{Role: look.Body, Icon: "clock", Text: "Battery 5 in the cutter, fitted 19:35, no reading"}),
		NewLabel(LabelView{Role: look.Body, Icon: "linked", Align: fyne.TextAlignTrailing, Text: "2 tablets together"}),
	)
	g := &page{}
	g.at(10, 6, 560, 710, left)
	g.at(600, 10, 280, 700, right)
	return g.done()
}

func tileViews() []TileView {
	return []TileView{
		{ID: "1", Name: "Battery spreader", Mark: r41},
		{ID: "2", Name: "Wedge 4x4", Mark: r41, Figure: "12"},
		{ID: "3", Name: "Step chock", Mark: r41, Figure: "4", Picked: true},
		{ID: "4", Name: "Chain saw 16 in", Mark: r41, State: TileTagged, Word: "tagged"},
		{ID: "5", Name: "Tool battery 2", Mark: r41, State: TileRunning, Word: "22 %"},
		{ID: "6", Name: "Hand lantern 1", Mark: r41, State: TileOverdue, Word: "out 66"},
		{ID: "7", Name: "Battery light 2", Mark: r41, State: TileContested, Word: "V1? V2?"},
		{ID: "8", Name: "Medium strut 1", Mark: r41, State: TileBlocked, Word: "blocked"},
		{ID: "9", Name: "Bleeding-control pouch", Mark: r41, State: TileKit, Word: "kit"},
		{ID: "10", Name: "Oxygen case", Mark: r41, State: TileKitOpen, Word: "open"},
		{ID: "11", Name: "Step chock", Mark: r41, State: TileShort, Word: "3 of 4"},
		{ID: "12", Name: "Forcible-entry bar", Mark: p71},
		{ID: "13", Name: "Lifting bag crate", Mark: r41, State: TileTwo, Word: "two"},
		{ID: "14", Name: "Fleece blanket", Mark: r41, State: TileBagged, Word: "bagged"},
		{ID: "15", Name: "Attack line lengths", Mark: e42, State: TileCarried, Figure: "2"},
		{ID: "16", Name: "Long green hook", State: TileUnknown, Word: "whose?"},
		{ID: "17", Name: "Oxygen cylinder D, spare", Mark: r41, State: TileWith, Word: "Medic 9"},
		{ID: "18", Name: "Tool battery 5", Mark: r41, State: TileCharging, Word: "58 %"},
		{ID: "19", Name: "Spring punch", Mark: r41, State: TileLooked, Word: "1 of 2"},
		{ID: "20", Name: "Spring punch", Mark: r41, State: TileLost, Word: "lost"},
		{ID: "21", Name: "Battery telescoping ram", Mark: r41, Raised: true, Word: "L1"},
		{ID: "22", Name: "Hard patient shield", Mark: r41, Raised: true, Word: "L1", Figure: "2"},
		{ID: "23", Name: "Throw bag 75 ft", Mark: s44, State: TileTagged, Word: "tagged", Picked: true},
		{ID: "24", Name: "Recipro\u00adcating saw 1", Mark: r41, Word: "by P71"},
		{ID: "25", Name: "Head block set", Mark: MarkView{"diamond", "red", "M15"}, Word: "ours?"},
		{ID: "find", Name: "Find", Word: "three letters", Icon: "find", State: TileAct},
		{ID: "more", Name: "more", Figure: "4", Icon: "down", State: TileAct},
		{Name: "Nothing on the tarp", State: TileEmpty},
		{ID: "24b", Name: "Oxygen cylinder D, in case", Mark: r41, State: TileRunning, Word: "600 psi"},
	}
}

func tileStory() fyne.CanvasObject {
	g := &page{}
	for i, v := range tileViews() {
		g.at(10+float32(i%8)*156, 8+float32(i/8)*132, 142, 118, NewTile(v, nil))
	}
	return g.done()
}

func longTileStory() fyne.CanvasObject {
	t := NewTiles(nil)
	t.Set([]TileView{
		{ID: "1", Name: "Forcible-entry bar with adjustable claw, second of two", Mark: r41},
		{ID: "2", Name: "Oxygen cylinder size D with regulator, in hard case", Mark: r41, State: TileRunning, Word: "1,200 psi"},
		{ID: "3", Name: "Extrication gloves, pair, extra-extra-large", Mark: MarkView{"", "", "MA7"}, Figure: "128"},
		{ID: "4", Name: "Telescopinghydraulicram", Mark: p71, Figure: "1", Word: "by R41"},
		{ID: "5", Name: "Patient shield, hard", Second: "Rosalind Quist, E42", Mark: r41, Figure: "2"},
		{ID: "6", Name: "Air lifting bag controller with two deadman valves, regulator, four hoses of thirty feet each in red, blue, yellow and black, in a bag", Mark: r41, State: TileTwo, Word: "two"},
		{ID: "7", Name: "Wedge", Mark: r41, Figure: "1,024", State: TileShort, Word: "992 of 1,024"},
	})
	g := &page{}
	g.at(10, 10, 900, 400, t)
	return g.done()
}

func manyTiles(n int) []TileView {
	base := tileViews()[:15]
	out := make([]TileView, n)
	for i := range out {
		out[i] = base[i%len(base)]
		out[i].ID = fmt.Sprint(i)
		out[i].Picked = i == 7
	}
	return out
}

func pageStory() fyne.CanvasObject {
	t := NewTiles(nil)
	t.More = func(left int) TileView {
		if left == 0 {
			return TileView{Name: "first page", Icon: "up"}
		}
		return TileView{Figure: fmt.Sprint(left), Name: "more", Icon: "down"}
	}
	t.Tail = &TileView{ID: "find", Name: "Find", Word: "three letters", Icon: "find", State: TileAct}
	t.Set(manyTiles(40))
	q := NewPanel(PanelView{ID: "tarp", Hem: true, Title: "On the tarp", Note: "18 lines, the tarp itself is one",
		Right: "Staging: " + B("Hanneke Doyle") + " since 19:50"}, t)
	g := &page{}
	g.at(0, 0, 920, 411, q)
	return g.done()
}

func scrollStory() fyne.CanvasObject {
	t := NewTiles(nil)
	t.Set(manyTiles(120))
	q := NewPanel(PanelView{Title: "At V2", Note: "21 lines: 14 of Rescue 41, 3 of Engine 42, 4 of Rescue-Pumper 71"}, t)
	g := &page{}
	g.at(0, 0, 920, 411, q)
	t.ScrollToOffset(look.U(252))
	return g.done()
}
