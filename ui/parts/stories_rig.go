package parts

import (
	"fyne.io/fyne/v2"

	"tarpside/ui/look"
)

func rigStory() fyne.CanvasObject {
	g := &page{}
	doors := []struct {
		x, w float32
		v    DoorView
	}{
		{0, 84, DoorView{ID: "CAB-L", Name: "cab", Mode: DoorHome, Cab: "left", Wheel: true}},
		{88, 90, DoorView{ID: "L1", Name: "L1", Count: "6, passed", Mode: DoorPassed}},
		{180, 100, DoorView{ID: "T2-L", Name: "T2", Count: "5 to go", Mode: DoorHere, Side: "driver side"}},
		{282, 86, DoorView{ID: "L3", Name: "L3", Count: "3 to go", Wheel: true}},
		{370, 88, DoorView{ID: "L4", Name: "L4", Count: "home", Mode: DoorHome}},
		{468, 88, DoorView{ID: "B1", Name: "B1", Count: "5 to go", Side: "rear"}},
		{568, 90, DoorView{ID: "R4", Name: "R4", Count: "7 to go"}},
		{660, 88, DoorView{ID: "R3", Name: "R3", Count: "5 to go", Wheel: true}},
		{750, 88, DoorView{ID: "T2-R", Name: "T2", Count: "home", Mode: DoorHome, Side: "officer side"}},
		{840, 80, DoorView{ID: "R1", Name: "R1", Count: "2 to go"}},
		{922, 84, DoorView{ID: "CAB-R", Name: "cab", Count: "1", Cab: "right", Wheel: true}},
		{1018, 74, DoorView{ID: "BOX1", Name: "box 1", Count: "2 out", Side: "roof"}},
		{1094, 74, DoorView{ID: "BOX2", Name: "box 2", Count: "2 to go"}},
	}
	g.at(0, 124, 1168, 2, NewDrawn(Part{}, 1, 1, func(p *Pen, size fyne.Size) {
		p.Fill(0, look.U(2), size.Width, look.U(2), look.Strong)
	}))
	for _, d := range doors {
		g.at(d.x, 0, d.w, DoorHigh, NewDoor(d.v, nil))
	}
	return g.done()
}

func slotStory() fyne.CanvasObject {
	g := &page{}
	g.say(10, 0, 200, "Ceiling rack")
	slot := func(x, y, w, h float32, v SlotView) { g.at(x, y, w, h, NewSlotBox(v, nil)) }
	slot(10, 24, 196, 74, SlotView{ID: "a", Name: "Basket litter", Second: "two people, after the crate", Icon: "two", Mode: SlotHole})
	slot(212, 24, 150, 74, SlotView{ID: "b", Name: "Backboard 2", Second: "15 lb, then", Mode: SlotHole})
	slot(368, 24, 172, 74, SlotView{ID: "c", Name: "Backboard 1", Second: "with Medic 9", Icon: "with", Mode: SlotHole})
	slot(10, 120, 138, 172, SlotView{ID: "d", Name: "Strut crate", Second: "131 lb, after the struts", Icon: "two", Mode: SlotHole, Lay: SlotTall})
	slot(156, 120, 256, 52, SlotView{ID: "e", Name: "Medium strut 1", Word: "next in", Mode: SlotNow, Lay: SlotLine, Strut: true})
	slot(156, 176, 256, 52, SlotView{ID: "f", Name: "Medium strut 2", Word: "then", Mode: SlotHole, Lay: SlotLine, Strut: true})
	slot(156, 232, 256, 30, SlotView{ID: "g", Name: "Medium struts 3, 4", Word: "home", Mode: SlotHome, Lay: SlotLine, Strut: true})
	slot(156, 266, 256, 52, SlotView{ID: "h", Name: "Medium strut 1", Word: "blocked", Mode: SlotAlarm, Lay: SlotLine, Strut: true})
	slot(420, 120, 120, 172, SlotView{ID: "i", Name: "Winch crate", Second: "home, closes the right end", Icon: "bar", Mode: SlotAlarm, Lay: SlotTall})
	slot(10, 330, 248, 74, SlotView{ID: "j", Name: "Pinch bar 5 ft", Second: "home, under the crate", Icon: "tick", Mode: SlotHome})
	slot(266, 330, 274, 74, SlotView{ID: "k", Name: "Rack jack and foot with its long base plate", Second: "home, at the right door", Icon: "tick", Mode: SlotHome})
	for i, v := range []SlotView{
		{ID: "1", Over: "battery", Name: "1", Second: "to go", Mode: SlotHole},
		{ID: "2", Over: "battery", Name: "2", Second: "now", Mode: SlotNow},
		{ID: "3", Over: "battery", Name: "3", Second: "home", Mode: SlotHome},
	} {
		v.Lay = SlotCount
		slot(548, 24+float32(i)*142, 64, 136, v)
	}
	return g.done()
}

func sweepStory() fyne.CanvasObject {
	g := &page{}
	for i, v := range []SlotView{
		{ID: "1", Name: "Short vest", Second: "log: home", Icon: "home", Mode: SlotHome},
		{ID: "2", Name: "Head block set", Second: "you say: empty", Icon: "look", Mode: SlotAlarm},
		{ID: "3", Name: "Splint bag", Second: "log: home", Icon: "home", Mode: SlotHome},
		{ID: "4", Name: "Neck collar bag", Second: "known out: tarp", Icon: "tarp", Mode: SlotHole},
		{ID: "5", Name: "Fleece blanket", Second: "4, all known out", Icon: "with", Mode: SlotHole},
		{ID: "6", Name: "Foil blanket", Second: "how many do you see?", Icon: "plus", Mode: SlotHome},
		{ID: "7", Name: "Oxygen spare", Second: "behind the case: tarp", Icon: "tarp", Mode: SlotHole},
		{ID: "8", Name: "Defibrillator (AED)", Second: "log: home", Icon: "home", Mode: SlotHome},
		{ID: "9", Name: "First-aid pack", Second: "you saw 3", Icon: "tick", Mode: SlotNow},
	} {
		v.Lay = SlotCorner
		g.at(10+float32(i%3)*198, 10+float32(i/3)*106, 190, 94, NewSlotBox(v, nil))
	}
	return g.done()
}

func stripStory() fyne.CanvasObject {
	g := &page{}
	for i, v := range []StripView{
		{ID: "last", Title: B("19:48") + "  Chain saw 16 in, Bank to " + B("Tarp") + ", tagged: chain thrown", Second: "19:50 Eli Krantz hands staging to Hanneke Doyle, list read aloud"},
		{ID: "last", Tone: StripNow, Title: "Now touch a place", Second: "More pieces can be picked first. They all go together."},
		{ID: "reply", Tone: StripRefused, Title: "Already on the tarp", Second: "Battery spreader, 18:59. Nothing changed.", Keys: [2]StripKey{{ID: "seen", Title: "Seen"}}},
		{ID: "reply", Tone: StripRefused, Title: "13 asked, 12 here", Second: "12 wedges more are at home in L3.", Keys: [2]StripKey{{ID: "take", Title: "Take 12", Filled: true}, {ID: "seen", Title: "Seen"}}},
		{ID: "reply", Tone: StripWarned, Title: "Straight off, logged 1 min late", Second: "Entry bar A, R1 to V1 with Brandvold, 19:01", Keys: [2]StripKey{{ID: "undo", Title: "Undo"}}},
		{ID: "reply", Tone: StripContested, Title: "Battery light 2: V1 or V2?", Second: "A: V1, Satterlee. B: V2, Brandvold. Go and look.", Keys: [2]StripKey{{ID: "V1", Title: "V1"}, {ID: "V2", Title: "V2"}}},
		{ID: "alert", Tone: StripWetLock, Title: "Wet lock is on", Second: "Nothing can be touched. The screen still shows all.", Keys: [2]StripKey{{ID: "unlock", Title: "Hold to unlock", Hold: true, Sure: "Unlock"}}},
		{ID: "alert", Tone: StripWrong, Title: "Does not add up", Second: "Step chock: places hold 5, rig owns 4. No row is lost.", Keys: [2]StripKey{{ID: "show", Title: "Show"}}},
		{ID: "alert", Tone: StripStale, Title: "Data is 7 min old", Second: "Tablet B out of touch. Work goes on, both logs join later."},
		{ID: "alert", Tone: StripPractice, Title: "Practice", Second: "Nothing here is a real call.", Keys: [2]StripKey{{ID: "end", Title: "End practice", Hold: true, Sure: "End"}}},
		{ID: "alert", Tone: StripReadOnly, Title: "For reading only", Second: "This log was written by a newer program. Nothing can be entered."},
		{ID: "reply", Tone: StripOK, Title: "On the tarp", Second: "Battery spreader and 3 more, 18:59", Keys: [2]StripKey{{ID: "undo", Title: "Undo"}}},
		{ID: "reply", Tone: StripRefused, Title: "The forcible-entry bar with the adjustable claw is with Highway since 20:14", Second: "Ask Highway, 555-0133, before it is entered as lost. Nothing was changed and nothing is missing from the log.", Keys: [2]StripKey{{ID: "seen", Title: "Seen"}, {ID: "open", Title: "Show it"}}},
	} {
		g.at(10+float32(i%2)*616, 4+float32(i/2)*96, 608, 88, NewStrip(v, nil))
	}
	return g.done()
}

func footStory() fyne.CanvasObject {
	g := &page{}
	base := FootView{OffWord: "came off", Words: FootWords, Says: "Adds up", And: "and", Elsewhere: "elsewhere"}
	views := []FootView{base, base, base, base, base}
	views[0].CameOff, views[0].Counts = 314, [FootTerms]int{FootTarp: 121, FootOut: 180, FootUsed: 13}
	views[1].CameOff, views[1].Counts = 333, [FootTerms]int{98, 163, 10, 0, 10, 2, 2, 45, 0, 3}
	views[2].CameOff, views[2].Counts = 1340, [FootTerms]int{1153, 15, 10, 16, 15, 2, 2, 51, 1, 75}
	views[3] = views[2]
	views[3].Most = 5
	views[4].Wrong, views[4].Says, views[4].CameOff = true, "Does not add up", 333
	views[4].Counts = views[1].Counts
	views[4].Line = "Step chock: places hold 5, rig owns 4. Last row 109, Bank to Tarp, 20:45"
	for i, v := range append([]FootView{base}, views...) {
		g.objs = append(g.objs, nil)
		f := NewFoot(v)
		g.objs[len(g.objs)-1] = f
		f.Move(fyne.NewPos(0, look.U(float32(i)*60)))
	}
	wide := NewDrawn(Part{}, 0, 0, nil)
	wide.paint = func(_ *Pen, size fyne.Size) {
		for _, o := range wide.kids {
			o.Resize(fyne.NewSize(size.Width, look.U(look.Foot)))
		}
	}
	wide.kids = g.objs
	return wide
}

func panelStory() fyne.CanvasObject {
	g := &page{}
	text := func(s string) fyne.CanvasObject { return NewLines(LabelView{Text: s, Role: look.Body}) }
	g.at(10, 10, 420, 200, NewPanel(PanelView{Hem: true, Title: "On the tarp", Note: "18 lines"}, text("The tarp has a hem and grommets because it is the real tarp.")))
	g.at(440, 10, 360, 200, NewPanel(PanelView{Tone: Live, Large: true, Title: "Grab now", Note: "close by, and it cannot work without them", Right: "3 lines", Rule: true}, text("Touch a line to send it to the other list.")))
	g.at(810, 10, 360, 200, NewPanel(PanelView{ID: "hazard", Tone: Alarm, Icon: "boots", Title: "Wheel chocks?"}, text("The log has 2 at home, on no list. Look before rolling.")))
	g.at(10, 220, 420, 130, NewPanel(PanelView{Title: "Goes without"}, text("Attack line: "+B("2 of 4")+"\nDry-chem: "+B("none")+"\nCamera: "+B("charge not read"))))
	g.at(440, 220, 360, 130, NewPanel(PanelView{Title: "ride home tagged", Figure: "5", Right: "since 19:00"}, text("Chain saw, life-safety rope 1, lantern 1, oxygen in case 600 psi, oxygen spare")))
	g.at(810, 220, 360, 60, NewPanel(PanelView{Tone: Alarm}, NewLines(LabelView{Icon: "warn", Role: look.Lead, Text: B("Stop looking") + " for traffic, the wrecker.", Mid: true})))
	var rows []fyne.CanvasObject
	for range 9 {
		rows = append(rows, NewRow(RowView{Title: "Long backboard 1", Right: "Medic 9", Open: true, Off: true}, nil))
	}
	g.at(810, 290, 360, 200, NewPanel(PanelView{Title: "11 open lines", Note: "by whom"}, NewScroller(NewColumn(0, rows...))))
	g.at(10, 360, 420, 130, NewPanel(PanelView{Figure: "11", Title: "open lines", Note: "of Rescue 41, by holder"}, text("Long backboard 1, head block set")))
	g.at(440, 360, 360, 130, NewPanel(PanelView{Tone: Hole}, text("A hole: nothing lies here.")))
	return g.done()
}

func rowStory() fyne.CanvasObject {
	left := NewColumn(0,
		NewRow(RowView{ID: "1", Figure: "1", Title: "Thermal camera", Second: "V2 with Lt Pruett", Go: "go"}, nil),
		NewRow(RowView{ID: "2", Figure: "12", Title: "Dry-chem extinguisher 20 lb with a very long name", Second: "V1 with Quist, 2 of 4", Go: "back"}, nil),
		NewRow(RowView{ID: "3", Mark: r41, Title: "Rescue 41", Second: "No cutter, spreader, oxygen, litter", Right: "15 more"}, nil),
		NewRow(RowView{ID: "4", Icon: "with", Title: "Medic 9", Second: "555-0109", NoRule: true}, nil),
		NewRow(RowView{ID: "5", Title: "Tool battery 2, at 22 %", Open: true, Off: true}, nil),
		NewRow(RowView{ID: "6", Mark: p71, Title: "2 wedges", Off: true, Right: "carried"}, nil),
	)
	right := NewColumn(6,
		NewRow(RowView{ID: "7", Number: "1", Title: "Ask Rosalind Quist, E42, by radio", Right: "not in her pockets, 21:38", Go: "cross", Tone: Hole, Dim: true, Open: true, Off: true}, nil),
		NewRow(RowView{ID: "8", Number: "2", Title: "Tarp, and under it", Right: "not here, 21:39", Go: "cross", Tone: Hole, Dim: true, Open: true, Off: true}, nil),
		NewRow(RowView{ID: "9", Number: "3", Title: "V1 glass pile", Second: "last logged place of the kit. About 4 minutes.", Tone: Live}, nil),
		NewRow(RowView{ID: "10", Number: "4", Title: "Other slots on Rescue 41", Right: "about 3 min", Tone: Quiet, Off: true}, nil),
		NewRow(RowView{ID: "11", Icon: "warn", Title: "If sent now", Second: "No oxygen. No head blocks.", Tone: Alarm}, nil),
		NewRow(RowView{ID: "12", Kind: KindMember, Title: "Hanneke Doyle", Second: "staging since 19:50", Go: "tick", Tone: Live}, nil),
	)
	g := &page{}
	g.at(10, 6, 570, 650, left)
	g.at(600, 6, 570, 650, right)
	return g.done()
}
