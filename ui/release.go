package ui

import (
	"reflect"
	"strings"

	"fyne.io/fyne/v2"

	"tarpside/board"
	"tarpside/model"
	"tarpside/ui/look"
	"tarpside/ui/parts"
	"tarpside/ui/words"
)

// releaseScreen lets one rig go while the scene works: what it grabs, what it
// leaves and with whom, what is elsewhere already. The rig is the one that is
// called away most likely; every other that is here is one touch away.
type releaseScreen struct {
	sh    *Shell
	rig   string
	split *split // what was chosen for this rig

	view   releaseView
	root   *fyne.Container
	grab   *releaseColumn
	leave  *releaseColumn
	fewer  *parts.Key
	more   *parts.Key
	away   *reading[[]string]
	chocks *reading[chocksView]
	yes    *parts.Key
	no     *parts.Key
	lacks  *reading[[]string]
	stays  *parts.Row
	radio  *parts.Label
	hold   *parts.HoldKey
	note   *parts.Strip
	act    *parts.Key
	signer *signerKeys
	accept *signerKeys
	aloud  *parts.Key
	tabs   *rigHead
}

func newRelease(sh *Shell, rig string) *releaseScreen {
	r := &releaseScreen{sh: sh, rig: rig}
	r.tabs = newRigHead(sh, r.turn)
	r.grab = newReleaseColumn(r.touch, "grab")
	r.leave = newReleaseColumn(r.touch, "leave")
	r.fewer = parts.NewKey(parts.KeyView{}, func() { r.step(-1) })
	r.more = parts.NewKey(parts.KeyView{}, func() { r.step(1) })
	r.away = newReading(paintElsewhere)
	r.chocks = newReading(paintChocks)
	r.yes = parts.NewKey(parts.KeyView{}, func() { r.answer("yes") })
	r.no = parts.NewKey(parts.KeyView{}, func() { r.answer("no") })
	r.lacks = newReading(paintWithout)
	r.stays = parts.NewRow(parts.RowView{}, r.nextStays)
	r.radio = parts.NewLines(parts.LabelView{})
	r.hold = parts.NewHoldKey(parts.HoldView{}, r.held)
	r.note = parts.NewStrip(parts.StripView{}, func(string) { sh.said = nil; sh.refresh() })
	r.act = parts.NewKey(parts.KeyView{}, r.roll)
	r.signer, r.accept = newSignerKeys(sh), newSignerKeys(sh)
	r.aloud = parts.NewKey(parts.KeyView{}, func() {
		a := newAloud(sh, words.F("%s leaving", r.view.Name), func(n *now) []aloudPage {
			v := n.releaseOf(r.rig, r.split)
			return v.aloud()
		})
		a.paper = "release_" + r.rig
		sh.open(a)
	})
	r.root = box(r.layout)
	return r
}

func (r *releaseScreen) body() fyne.CanvasObject { return r.root }

// touch sends a row to the other side, with all that is of it on its side.
func (r *releaseScreen) touch(key, side string) {
	for _, row := range r.view.Rows {
		if row.Key != key || r.view.Left {
			continue
		}
		r.split.grab[key] = row.N
		if side == "grab" {
			r.split.grab[key] = 0
		}
		if row.Counts {
			r.split.row = key
		}
	}
	r.sh.refresh()
}

// counted is the row that one fewer and one more are about: the one touched
// last, else the first that is counted.
func (r *releaseScreen) counted() *releaseRow {
	var first *releaseRow
	for i := range r.view.Rows {
		row := &r.view.Rows[i]
		if row.Counts && row.Key == r.split.row {
			return row
		}
		if row.Counts && first == nil && row.Grab > 0 {
			first = row
		}
	}
	return first
}

// step sends one piece to the other side.
func (r *releaseScreen) step(by int) {
	if row := r.counted(); row != nil {
		r.split.row = row.Key
		r.split.grab[row.Key] = max(0, min(row.Grab+by, row.N))
	}
	r.sh.refresh()
}

func (r *releaseScreen) answer(a string) {
	if r.split.chocks == a {
		a = ""
	}
	r.split.chocks = a
	r.sh.refresh()
}

// nextStays takes the next rig that is here to leave the rest with.
func (r *releaseScreen) nextStays() {
	list := r.others()
	for i, o := range list {
		if o == r.view.Stays {
			r.split.stays = list[(i+1)%len(list)]
			break
		}
	}
	r.sh.refresh()
}

// others are the rigs that could take care of what is left.
func (r *releaseScreen) others() []string {
	n := r.sh.now()
	var out []string
	for _, o := range n.present() {
		if o != r.rig && n.atScene(o) {
			out = append(out, o)
		}
	}
	return out
}

// accepts tells whether an officer still has to sign for what is left.
func (v *releaseView) accepts() bool {
	return v.Released > 0 && !v.Accepted && v.LeaveLines > 0 && v.Stays != ""
}

// held is a signature: of the officer who lets the rig go, or of the one who
// takes care of what it leaves.
func (r *releaseScreen) held() {
	n := r.sh.now()
	v := n.releaseOf(r.rig, r.split)
	if v.accepts() {
		if r.accept.chosen == "" {
			r.accept.all()
			return
		}
		r.sh.log(board.Tap{Acts: []model.Act{{Verb: model.Accept, By: r.accept.chosen, Rig: r.rig, Holder: v.Stays, Quantity: model.Blank}}})
		return
	}
	if r.signer.chosen == "" {
		r.signer.all()
		return
	}
	by := r.signer.chosen
	tap := board.Tap{Acts: []model.Act{{Verb: model.Release, By: by, Rig: r.rig, Quantity: model.Blank}}}
	if r.split.chocks == "no" {
		for i := range n.d.Items {
			if it := &n.d.Items[i]; it.Rig == r.rig && wheelChock(it) && n.s.Aboard(i) {
				tap.Acts = append(tap.Acts, model.Act{Verb: model.Count, By: by, Item: it.ID, Quantity: 0, From: "home"})
			}
		}
	}
	for _, row := range v.Rows {
		r.split.grab[row.Key] = row.Grab
	}
	r.split.signed = true
	r.sh.rig, r.sh.away = r.rig, r.rig
	r.sh.log(tap)
}

// roll is the key beside the signature: the rig rolls, or it is back.
func (r *releaseScreen) roll() {
	a := model.Act{Verb: model.Leave, By: r.signer.chosen, Rig: r.rig, Quantity: model.Blank}
	if r.view.Left {
		a.Verb = model.Arrive
	}
	if a.By == "" {
		a.By = r.releasedBy()
	}
	r.sh.log(board.Tap{Acts: []model.Act{a}})
}

// releasedBy is who signed the release, on whichever tablet.
func (r *releaseScreen) releasedBy() string {
	by := ""
	for _, e := range r.sh.pic.Entries {
		if e.Verb == model.Release && e.Rig == r.rig && e.Taken() {
			by = e.By
		}
	}
	return by
}

func (r *releaseScreen) show(n *now) head {
	r.split = n.splitOf(r.rig)
	v := n.releaseOf(r.rig, r.split)
	r.view = v
	r.showColumns(n, &v)
	r.away.set(v.Elsewhere, "elsewhere", words.F("Already elsewhere: %s", orWord(strings.Join(v.Elsewhere, ", "), words.L("none"))))
	r.chocks.set(v.Chocks, "chocks", words.F("Wheel chocks? %s", v.Chocks.Says))
	r.lacks.set(v.Without, "goes-without", words.F("Goes without: %s", orWord(parts.Plain(strings.Join(v.Without, ", ")), words.L("nothing"))))
	answer := func(id, title string) parts.KeyView {
		k := parts.KeyView{Kind: parts.KindAnswer, ID: "chocks=" + id, Title: title, Lay: parts.LayCentre, Role: look.Group}
		if v.Chocks.Answer == id {
			k.Tone, k.State = parts.Live, "given"
		}
		return k
	}
	r.yes.Set(answer("yes", words.L("Aboard")))
	r.no.Set(answer("no", words.L("Not here")))
	r.stays.Set(parts.RowView{ID: "stays", Mark: n.mark(v.Stays), Title: words.F("With %s", v.StaysName), Second: words.L("Touch for another rig"), Tone: parts.Quiet})
	r.radio.Set(parts.LabelView{ID: "radio", Text: "\u201c" + v.Radio + "\u201d", Role: look.Lead, Icon: "radio", Mid: true})
	r.showSigning(n, &v)
	objs := r.objects(&v)
	if !reflect.DeepEqual(r.root.Objects, objs) {
		r.root.Objects = objs
		relay(r.root)
	}
	return r.head(n, &v)
}

func orWord(s, other string) string {
	if s == "" {
		return other
	}
	return s
}

func (r *releaseScreen) showColumns(n *now, v *releaseView) {
	narrow := n.root != nil && design(n.root.Size().Width) < 1100
	head := parts.PanelView{Title: words.L("Grab now"), Note: parts.Or(words.L("close by or critical"), words.L("critical"), ""), Right: words.N("%d line", "%d lines", v.GrabLines), Tone: parts.Live}
	none := words.L("Nothing goes along.")
	switch {
	case v.Left:
		head.Title, head.Note, none = words.L("Not logged as loaded"), "", words.L("Nothing waits to be loaded.")
	case v.Released > 0:
		head.Title, head.Note, none = words.L("Load these first"), "", words.L("All that goes along is loaded.")
	}
	if narrow {
		head.Note = ""
	}
	r.grab.show(v.Rows, func(x releaseRow) int { return x.Grab }, head, none)
	head = parts.PanelView{Title: words.L("Leave here"), Right: words.N("%d line", "%d lines", v.LeaveLines)}
	switch {
	case v.Stays != "" && narrow:
		head.Title = words.F("Leave with %s", v.Stays)
	case v.Stays != "":
		head.Title = words.F("Leave with %s", v.StaysName)
	}
	r.leave.show(v.Rows, func(x releaseRow) int { return x.N - x.Grab }, head, words.L("Nothing stays."))
	key := func(id, title string, off bool) parts.KeyView {
		return parts.KeyView{ID: id, Title: title, Lay: parts.LayCentre, Role: look.Group, Off: off}
	}
	row := r.counted()
	fewer, more := key("fewer", words.L("One fewer"), true), key("more", words.L("One more"), true)
	if row != nil {
		fewer.Off, more.Off = row.Grab == 0, row.Grab == row.N
		fewer.Second = row.Name
		more.Second = words.F("%d of %d go", row.Grab, row.N)
	}
	r.fewer.Set(fewer)
	r.more.Set(more)
}

// showSigning is the lowest row: who signs, then who accepts, then the rig
// rolls.
func (r *releaseScreen) showSigning(n *now, v *releaseView) {
	r.signer.show(n, words.F("For %s", v.Name), n.actingFirst(n.signers(r.rig)))
	r.accept.show(n, words.F("For what %s leaves", v.Name), n.officers(v.Stays))
	h := parts.HoldView{ID: "sign", Mark: n.mark(r.rig), Title: words.F("Hold to sign for %s", v.Name), Second: words.L("Choose who signs. Leaving is signed, never stopped."), Sure: words.F("Sign for %s", r.rig), Tone: parts.Filled}
	if r.signer.chosen != "" {
		h.Second = words.F("%s signs. Leaving is signed, never stopped.", n.memberFull(r.signer.chosen))
	}
	if v.accepts() {
		h = parts.HoldView{ID: "accept", Mark: n.mark(v.Stays), Title: words.F("Hold to accept %s", words.N("%d line", "%d lines", v.LeaveLines)), Sure: words.L("Accept"), Tone: parts.Filled, Second: words.L("Choose the officer. Until then the lines stay open.")}
		if r.accept.chosen != "" {
			h.Second = words.F("%s, for %s.", n.memberFull(r.accept.chosen), v.StaysName)
		}
	}
	r.hold.Set(n.shutHold(h))
	note := parts.StripView{ID: "reply", Tone: parts.StripOK, Title: words.F("Signed by %s, %s", v.ReleasedBy, n.clock(v.Released)), Second: words.L("It leaves nothing that needs a second name.")}
	switch {
	case v.Accepted:
		note.Second = words.F("%s signed for what it leaves.", v.AcceptedBy)
	case v.LeaveLines > 0:
		note.Second = words.F("Nobody is here to sign for the %s: they stay open.", words.N("%d line", "%d lines", v.LeaveLines))
	}
	if v.Left {
		note.Title = words.F("Left at %s, signed by %s", n.clock(v.LeftAt), v.ReleasedBy)
	}
	if n.said != nil {
		if s, ok := n.answer(n.said); ok && (s.Tone == parts.StripRefused || s.Tone == parts.StripWrong) {
			note = s
		}
	}
	r.note.Set(note)
	k := parts.KeyView{ID: "leave", Title: parts.Or(words.F("%s leaves now", v.Name), words.F("%s leaves now", r.rig)), Mark: n.mark(r.rig), Lay: parts.LayLeft, Role: look.Name, Second: words.L("all is loaded")}
	if v.GrabLines > 0 {
		lines := words.N("%d line", "%d lines", v.GrabLines)
		k.Second = parts.Or(words.F("%s not loaded yet", lines), words.F("%s to load", lines))
	}
	if !v.accepts() {
		k.Tone = parts.Filled
	}
	if v.Left {
		k = parts.KeyView{ID: "arrive", Title: words.F("%s is back", v.Name), Mark: n.mark(r.rig), Lay: parts.LayLeft, Role: look.Name}
	}
	r.act.Set(n.shutKey(k))
}

func (r *releaseScreen) objects(v *releaseView) []fyne.CanvasObject {
	out := []fyne.CanvasObject{r.grab.panel, r.leave.panel, r.grab.more.obj, r.leave.more.obj, r.away.obj, r.chocks.obj, r.yes, r.no, r.lacks.obj, r.radio}
	if r.sh.now().narrow() {
		out = append(out, r.aloud)
	}
	if !v.Left && r.counted() != nil {
		out = append(out, r.fewer, r.more)
	}
	if len(r.others()) > 1 && !v.Left {
		out = append(out, r.stays)
	}
	failed := r.note.View().Tone == parts.StripRefused || r.note.View().Tone == parts.StripWrong
	switch {
	case failed:
		out = append(out, r.note)
	case v.accepts():
		out = append(out, r.hold, r.act, r.accept.root)
	case v.Released > 0:
		out = append(out, r.note, r.act)
	default:
		out = append(out, r.hold, r.signer.root)
	}
	return out
}
