package parts

import (
	"time"

	"fyne.io/fyne/v2"

	"tarpside/ui/look"
)

func placeStory() fyne.CanvasObject {
	g := &page{}
	rest := []PlaceKeyView{
		{ID: "tarp", Name: "Tarp", Count: "18", Unit: "lines", Verb: "last place", Mode: PlaceOpen},
		{ID: "home", Name: "Back home", Verb: "own slot", Icon: "home"},
		{ID: "V1", Name: "V1", Count: "8", Unit: "lines", Verb: "on its side"},
		{ID: "V2", Name: "V2", Count: "21", Unit: "lines", Verb: "down bank"},
		{ID: "BANK", Name: "Bank", Count: "10", Unit: "lines", Verb: "top of it"},
		{ID: "ROAD", Name: "Road", Count: "2", Unit: "lines", Verb: "traffic line"},
		{ID: "M9", Name: "Medic 9", Verb: "goes with", Icon: "with"},
		{ID: "SO", Name: "Sheriff", Verb: "goes with", Icon: "with"},
		{ID: "used", Name: "Used up", Verb: "stays used", Icon: "used"},
		{ID: "new", Name: "New place", Verb: "say a name", Icon: "plus"},
	}
	picked := []PlaceKeyView{
		{ID: "tarp", Name: "Tarp", Count: "18", Unit: "lines", Verb: "bring back", Mode: PlaceLikeliest},
		{ID: "home", Name: "Back home", Verb: "Load up", Icon: "home", Mode: PlaceShut},
		{ID: "V1", Name: "V1", Count: "8", Unit: "lines", Verb: "move", Mode: PlaceTarget},
		{ID: "V2", Name: "V2", Count: "21", Unit: "lines", Verb: "here now", Mode: PlaceShut},
		{ID: "BANK", Name: "Bank", Count: "10", Unit: "lines", Verb: "move", Mode: PlaceTarget},
		{ID: "ROAD", Name: "Command post lay-by", Count: "102", Unit: "lines", Verb: "move", Mode: PlaceTarget},
		{ID: "M9", Name: "Medic 9", Verb: "hand over", Icon: "with", Mode: PlaceTarget},
		{ID: "SO", Name: "County highways", Verb: "lend", Icon: "with", Mode: PlaceTarget},
		{ID: "used", Name: "Used up", Verb: "comes back", Icon: "used", Mode: PlaceShut},
		{ID: "new", Name: "New place", Verb: "say a name", Icon: "plus", Mode: PlaceTarget},
	}
	for i := range rest {
		x, y := float32(i%2)*124, float32(i/2)*128
		g.at(10+x, y, 116, 120, NewPlaceKey(rest[i], nil))
		g.at(290+x, y, 116, 120, NewPlaceKey(picked[i], nil))
	}
	return g.done()
}

func frameStory() fyne.CanvasObject {
	g := &page{}
	rail := []RailKeyView{
		{ID: "tarp", Word: "Tarp", Icon: "tarp", Here: true}, {ID: "glance", Word: "Glance", Icon: "glance"},
		{ID: "loadup", Word: "Load up", Icon: "load"}, {ID: "leaving", Word: "Leaving", Icon: "leave"},
		{ID: "lookfor", Word: "Look for it", Icon: "look", Note: "1"}, {ID: "more", Word: "More", Icon: "more"},
		{ID: "wetlock", Word: "Wet lock", Icon: "wet-lock"},
	}
	for i, v := range rail {
		g.at(0, float32(i)*106, 96, 106, NewRailKey(v, nil))
		v.Here = !v.Here
		g.at(110, float32(i)*106, 88, 106, NewRailKey(v, nil))
	}
	tabs := []RigTabView{
		{ID: "R41", Mark: r41, Name: "R41", Count: B("286") + " off", Shown: true},
		{ID: "E42", Mark: e42, Name: "E42", Count: B("9") + " off", Shown: true},
		{ID: "S44", Mark: s44, Name: "S44", Count: B("0") + " off"},
		{ID: "P71", Mark: p71, Name: "P71", Count: B("19") + " off", Shown: true},
	}
	for i, v := range tabs {
		g.at(470+float32(i)*180, 0, 172, 88, NewRigTab(v, nil))
		g.at(470+float32(i)*104, 200, 96, 88, NewRigTab(v, nil))
	}
	g.at(470, 300, 420, 88, NewRigTab(RigTabView{ID: "lead", Mark: e42, Name: "Engine 42", Count: "leaving now: 7 lines, 12 pieces out", Shown: true, Lead: true}, nil))
	g.at(898, 300, 120, 88, NewRigTab(RigTabView{ID: "signed", Mark: p71, Name: "P71", Count: "signed", Icon: "tick"}, nil))
	g.at(1026, 300, 88, 88, NewRigTab(RigTabView{ID: "left", Mark: r41, Name: "R41", Icon: "leave"}, nil))
	g.at(676, 100, 158, 88, NewKey(KeyView{ID: "read", Title: "Read\naloud", Icon: "say", Tone: Header}, nil))
	g.at(842, 100, 158, 88, NewKey(KeyView{ID: "rig-leaving", Title: "Rig\nleaving", Icon: "leave", Tone: Header}, nil))
	return g.done()
}

func keyStory() fyne.CanvasObject {
	g := &page{}
	g.at(10, 10, 520, 104, NewKey(KeyView{ID: "stow", Title: "In, both yes", Second: "one touch, if you looked at it", Icon: "in", Tone: Filled}, nil))
	g.at(10, 122, 520, 104, NewKey(KeyView{ID: "out", Title: "Take the crate out", Second: "131 lb, two people. Back in after the struts.", Icon: "two", Tone: Filled}, nil))
	g.at(10, 234, 256, 142, NewKey(KeyView{ID: "b", Title: "Winch crate out instead", Second: "right door, 114 lb, two people"}, nil))
	g.at(274, 234, 256, 142, NewKey(KeyView{ID: "c", Title: "All the rest is here", Second: "not yet: answer the hole, count the foil blankets", Off: true}, nil))
	g.at(10, 384, 168, 88, NewKey(KeyView{ID: "undo", Title: "Undo", Second: "last of 5", Icon: "undo"}, nil))
	g.at(186, 384, 194, 92, NewKey(KeyView{ID: "fewer", Title: "One fewer"}, nil))
	g.at(388, 384, 142, 92, NewKey(KeyView{ID: "skip", Title: "Skip", Tone: Quiet}, nil))
	g.at(10, 486, 184, 140, NewKey(KeyView{ID: "charger", Title: "To the charger", Icon: "plug", Tone: Filled}, nil))
	g.at(202, 486, 328, 104, NewKey(KeyView{ID: "leave-open", Title: "Leave it open", Second: "rides on the open list", Icon: "leave-down", Tone: Quiet}, nil))
	g.at(560, 10, 326, 92, NewKey(KeyView{ID: "not-here", Title: "Not here", Icon: "cross", Role: look.Screen}, nil))
	g.at(894, 10, 276, 92, NewKey(KeyView{ID: "found", Title: "Found", Icon: "tick", Tone: Filled, Role: look.Screen}, nil))
	g.at(560, 110, 300, 104, NewKey(KeyView{ID: "alarm", Title: "Stop looking", Second: "unsafe here", Icon: "warn", Tone: Alarm}, nil))
	g.at(868, 110, 302, 104, NewKey(KeyView{ID: "live", Title: "Engine 42", Second: "Capt Imre Valcourt", Mark: e42, Tone: Live}, nil))
	g.at(560, 222, 200, 118, NewKey(KeyView{Kind: KindMember, ID: "quist", Title: "Rosalind Quist", Second: "E42, nozzle"}, nil))
	g.at(768, 222, 200, 118, NewKey(KeyView{Kind: KindMember, ID: "long", Title: "Maximiliana Featherstonehaugh-Brandvold", Second: "Rescue-Pumper 71"}, nil))
	g.at(976, 222, 88, 88, NewKey(KeyView{ID: "up", Icon: "up"}, nil))
	g.at(1072, 222, 88, 88, NewKey(KeyView{ID: "down", Icon: "down", Off: true}, nil))
	p := NewKey(KeyView{ID: "pressed", Title: "Pressed", Icon: "go"}, nil)
	p.pressed = true
	g.at(560, 350, 300, 92, p)
	g.at(868, 350, 302, 92, NewKey(KeyView{ID: "day", Title: "Day", Icon: "day", Tone: Live}, nil))
	return g.done()
}

func handfulStory() fyne.CanvasObject {
	g := &page{}
	g.at(0, 0, 920, 128, NewPanel(PanelView{Tone: Live, Tight: true}, nil))
	g.at(18, 20, 32, 32, NewMark(r41, 32, false))
	g.at(60, 18, 210, 36, NewLabel(LabelView{Text: "Step chock", Role: look.Title}))
	g.at(18, 58, 250, 26, NewLabel(LabelView{Text: B("4") + " here, all picked", Role: look.Lead}))
	g.at(18, 84, 250, 24, NewLabel(LabelView{Text: "0 at home on Rescue 41", Role: look.Body}))
	for i, n := range []string{"1", "2", "3"} {
		g.at(280+float32(i)*128, 5, 120, 118, NewQuantityKey(n, n, false, nil))
	}
	g.at(664, 5, 152, 118, NewQuantityKey("all", "All 4", true, nil))
	g.at(824, 5, 90, 118, NewKey(KeyView{ID: "drop", Title: "", Second: "drop", Icon: "cross"}, nil))
	return g.done()
}

// stillClock never ticks: a story holds its breath.
func stillClock(func(time.Duration)) func() { return func() {} }

func holdStory() fyne.CanvasObject {
	g := &page{}
	add := func(x, y, w, h float32, v HoldView, held time.Duration, armed, right bool) {
		k := NewHoldKey(v, nil)
		k.Clock = stillClock
		k.held, k.armed, k.atRight = held, armed, right
		k.tell()
		g.at(x, y, w, h, k)
	}
	sign := HoldView{ID: "sign", Title: "Hold to sign, with 11 open", Second: "Capt Imre Valcourt. Ground has not been looked at.", Sure: "Sign", Tone: Filled}
	add(10, 10, 760, 92, sign, 0, false, false)
	add(10, 110, 760, 92, sign, 1300*time.Millisecond, false, false)
	add(10, 210, 760, 92, sign, 0, true, true)
	add(10, 310, 760, 92, sign, 0, true, false)
	stop := HoldView{ID: "stop", Title: "Officer: hold 3 seconds to stop looking", Second: "Capt Imre Valcourt. Closes it as lost and writes the lost report.", Sure: "Close as lost", Seconds: 3}
	add(780, 10, 390, 150, stop, 0, false, false)
	any := HoldView{ID: "anyway", Title: "The strut is in anyway", Second: "hold: logged as seen by your eyes", Sure: "It is in"}
	add(780, 168, 256, 142, any, 0, false, false)
	add(1044, 168, 130, 142, HoldView{ID: "unlock", Title: "Hold to unlock", Sure: "Unlock"}, time.Second, false, false)
	add(780, 318, 256, 92, HoldView{ID: "anyway", Title: "The strut is in anyway", Second: "an officer must hold this", Off: true}, 0, false, false)
	return g.done()
}

func digitStory() fyne.CanvasObject {
	g := &page{}
	g.at(0, 0, 520, 112, NewPanel(PanelView{}, nil))
	g.at(18, 6, 300, 24, NewLabel(LabelView{Text: "Charge left, percent", Role: look.Body}))
	g.at(18, 30, 300, 36, NewLabel(LabelView{Text: "Tool battery 2", Role: look.Screen}))
	g.at(18, 66, 300, 24, NewLabel(LabelView{Text: "was in the cutter", Role: look.Body}))
	g.at(336, 8, 168, 96, NewReadout(ReadoutView{ID: "typed", Text: "22", Tone: Live}))
	pad := NewDigitPad(func(string) {})
	pad.SetDone(Usual, true)
	g.at(0, 120, 328, 376, pad)
	g.at(336, 120, 184, 182, NewPanel(PanelView{ID: "verdict", Tone: Alarm, Icon: "bar", Title: "Not ready"},
		NewLines(LabelView{Text: "Under 80. It cannot go in as ready, nobody can wave it past.", Role: look.Body})))
	g.at(336, 308, 184, 182, NewKey(KeyView{ID: "charger", Title: "To the charger", Icon: "plug", Tone: Filled}, nil))
	return g.done()
}

func letterStory() fyne.CanvasObject {
	g := &page{}
	g.at(0, 6, 1168, 408, NewLetterPad(func(string) {}, func() {}, func() {}))
	return g.done()
}

func answerStory() fyne.CanvasObject {
	g := &page{}
	v := AnswerView{Check: "works", Question: "Works?", Second: "opens, locks, no leak", Yes: "Yes", No: "No"}
	g.at(0, 0, 520, 88, NewYesNo(v, nil))
	v.Check, v.Question, v.Second, v.Answer = "clean", "Clean?", "no blood, fuel, glass, mud", "yes"
	g.at(0, 96, 520, 88, NewYesNo(v, nil))
	v.Check, v.Question, v.Second, v.Answer = "latched", "Is the latch of the crate shut on both sides?", "both pins, look from below", "no"
	g.at(0, 192, 520, 88, NewYesNo(v, nil))
	v.Off = true
	g.at(0, 288, 520, 88, NewYesNo(v, nil))
	return g.done()
}
