package ui

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"tarpside/board"
	"tarpside/model"
	"tarpside/ui/parts"
	"tarpside/ui/words"
)

// question is something that the strip asks. It waits for one of its keys;
// any other touch on the screen lets it go.
type question struct {
	item   string // what it is about
	view   func(n *now) (parts.StripView, bool)
	answer func(id string)
}

// bounce is how long after an act the same one is taken for a finger that
// touched twice.
const bounce = 700 * time.Millisecond

// stripNow is what the strip of the tarp says: a question first.
func (t *tarpScreen) stripNow(n *now) parts.StripView {
	if t.ask != nil {
		if v, ok := t.ask.view(n); ok {
			return v
		}
		t.ask = nil
	}
	v := n.stripView(t.picks)
	if v.ID == "last" && len(n.lastEntries(1)) > 0 {
		v.Keys[1] = parts.StripKey{ID: "entries", Title: words.L("All")}
		if len(n.lastToCorrect()) > 0 {
			v.Keys[0] = parts.StripKey{ID: "correct", Title: words.L("Correct")}
		}
	}
	if n.narrow() && v.Keys[0].ID != "" { // beside two keys the last line but one gives way
		v.Second = parts.Or(v.Second, "")
	}
	if v.ID == "last" && len(n.goneWith()) > 0 {
		v.Keys[0] = parts.StripKey{ID: "due", Title: words.L("Due back?")}
	}
	if v.Tone == parts.StripWarned && v.Keys[1].ID == "" && len(n.lastToCorrect()) > 0 {
		v.Keys[1] = parts.StripKey{ID: "correct", Title: words.L("Correct")}
	}
	if t.number.wrong() {
		v.Title, v.Second = words.F("Touch a number up to %d", t.number.most()), ""
	}
	if len(t.picks) > 0 && t.earlier > 0 {
		v.Title, v.Second = words.F("Logged as %d min ago", t.earlier), parts.Or(words.L("Touch a place. Only this one is set back."), words.L("Only this one."))
	}
	if n.narrow() && len(t.picks) > 0 && t.ask == nil { // beside three keys
		v.Second = parts.Shortest(v.Second)
	}
	return v
}

// contested asks where a piece with two claims is: whoever looked touches one.
func (t *tarpScreen) contested(item string) *question {
	return &question{item: item,
		view: func(n *now) (parts.StripView, bool) { return n.claimsView(item) },
		answer: func(id string) {
			n := t.sh.now()
			i := n.d.ItemIndex(item)
			if i < 0 || n.s.Line(i).Contest == nil {
				return
			}
			for _, c := range n.s.Line(i).Contest.Claims {
				if id == claimKey(c) {
					t.logTap(board.Tap{Scene: n.scene.ID, Acts: []model.Act{{Verb: model.Settle, Item: item,
						Quantity: n.claimed(c), To: grounded(c.Place, n.scene.Ground), Holder: c.Holder}}})
					return
				}
			}
		}}
}

// noticed asks about a line that became contested since the screen was last
// shown: two logs have met. Work in hand goes on first.
func (t *tarpScreen) noticed(n *now) {
	was := t.disputes
	t.disputes = map[string]bool{}
	for i := range n.d.Items {
		if c := n.s.Line(i).Contest; c == nil || len(c.Claims) < 2 {
			continue
		}
		id := n.d.Items[i].ID
		t.disputes[id] = true
		if was != nil && !was[id] && t.ask == nil && len(t.picks) == 0 && !t.find.on {
			t.ask = t.contested(id)
		}
	}
}

func claimKey(c model.Claim) string { return "settle-" + c.Place.String() }

// grounded is a place as an act names it: with its ground where that is not
// the scene's own.
func grounded(p model.Place, ground string) string {
	if (p.Kind == model.Tarp || p.Kind == model.At) && p.Ground != ground {
		if b, err := p.MarshalText(); err == nil {
			return string(b)
		}
	}
	return p.String()
}

// claimed is how many pieces a claim is about.
func (n *now) claimed(c model.Claim) int {
	for i := len(n.pic.Entries) - 1; i >= 0; i-- {
		if e := &n.pic.Entries[i]; e.Stamp.Device == c.Device && e.N() == c.N && e.Quantity > 0 {
			return e.Quantity
		}
	}
	return 1
}

// claimsView names both claims on a line and has a key for each.
func (n *now) claimsView(item string) (parts.StripView, bool) {
	i := n.d.ItemIndex(item)
	if i < 0 || n.s.Line(i).Contest == nil || len(n.s.Line(i).Contest.Claims) < 2 {
		return parts.StripView{}, false
	}
	v := parts.StripView{ID: "reply", Tone: parts.StripContested}
	var where, says []string
	for k, c := range n.s.Line(i).Contest.Claims[:2] {
		name := n.placeName(c.Place)
		who := n.memberShort(c.By)
		if c.By == "" {
			who = n.deviceWord(c.Device)
		}
		where = append(where, name)
		says = append(says, words.F("%s at %s: %s", who, n.clock(c.At), name))
		v.Keys[k] = parts.StripKey{ID: claimKey(c), Title: name}
	}
	v.Title = n.d.Items[i].Short() + ": " + strings.Join(where, words.L(" or ")) + "?"
	v.Second = words.F("%s. Look, then touch one.", strings.Join(says, "; "))
	return v, true
}

// logTap logs a touch of this screen. The same again within a blink is asked
// about first: a wet finger touches twice.
func (t *tarpScreen) logTap(tap board.Tap) []model.Entry {
	now := t.sh.opts.tick()
	same := slices.Equal(tap.Acts, t.logged.Acts) && now.Sub(t.loggedAt) < bounce
	if t.earlier > 0 && tap.Typed.IsZero() {
		tap.Typed = t.sh.now().at.Add(-time.Duration(t.earlier) * time.Minute)
	}
	t.earlier, t.named = 0, nil
	if same {
		t.again(tap)
		return nil
	}
	t.logged, t.loggedAt = tap, now
	return t.sh.logOffer(tap)
}

// again asks whether the same act is meant twice.
func (t *tarpScreen) again(tap board.Tap) {
	t.ask = &question{
		view: func(n *now) (parts.StripView, bool) {
			a := &tap.Acts[0]
			what := a.Item
			if it := n.d.Item(a.Item); it != nil {
				what = pieces(it, a.Quantity)
			}
			if len(tap.Acts) > 1 {
				what = words.N("%d line", "%d lines", len(tap.Acts))
			}
			if p, err := model.ParsePlace(a.To); err == nil {
				what += words.F(" to %s", n.placeName(p))
			}
			return parts.StripView{ID: "reply", Tone: parts.StripWarned, Title: words.L("The same again?"), Second: words.F("%s, logged a moment ago.", what),
				Keys: [2]parts.StripKey{{ID: "yes", Title: words.L("Yes")}, {ID: "no", Title: words.L("No")}}}, true
		},
		answer: func(id string) {
			if id == "yes" {
				t.loggedAt = t.sh.opts.tick()
				t.sh.logOffer(tap)
				return
			}
			t.sh.refresh()
		}}
	t.sh.refresh()
}

// bounced tells whether a touch on a place that pieces were just sent to is
// the same finger once more. What is still there to be sent is asked about.
func (t *tarpScreen) bounced(place string) bool {
	if place != t.last || len(t.logged.Acts) == 0 || t.sh.opts.tick().Sub(t.loggedAt) >= bounce {
		return false
	}
	n := t.sh.now()
	for _, a := range t.logged.Acts {
		i := n.d.ItemIndex(a.Item)
		from, err := n.s.Resolve(a.From, i, n.scene.ID)
		if i < 0 || err != nil || n.s.Line(i).N(from) < a.Quantity {
			return true
		}
	}
	t.again(board.Tap{Scene: t.logged.Scene, Acts: slices.Clone(t.logged.Acts)})
	return true
}

// takeBack undoes the newest touch. Where others have moved the pieces on it
// says so and offers to correct.
func (t *tarpScreen) takeBack() {
	n := t.sh.now()
	tap, left := n.undoPast(t.left)
	t.calm()
	switch said, e := n.movedOn(tap); {
	case left == 0:
	case e != nil:
		t.ask = &question{
			view: func(*now) (parts.StripView, bool) {
				return parts.StripView{ID: "reply", Tone: parts.StripRefused, Title: words.L("Undo cannot take that back"), Second: said,
					Keys: [2]parts.StripKey{{ID: "correct", Title: words.L("Correct"), Filled: true}, {ID: "leave-it", Title: words.L("Leave it")}}}, true
			},
			answer: func(id string) {
				if id == "correct" {
					t.sh.open(newMending(t.sh, *e))
					return
				}
				t.left[tap.Mends] = true
				t.sh.refresh()
			}}
	default:
		t.picks = nil
		t.logged = board.Tap{} // what was taken back may be done again at once
		t.sh.log(n.staged(tap))
		return
	}
	t.sh.refresh()
}

// staged is a touch in the name of who stages, as all that the Tarp logs.
func (n *now) staged(tap board.Tap) board.Tap {
	for i := range tap.Acts {
		if tap.Acts[i].By == "" {
			tap.Acts[i].By = n.scene.Staging
		}
	}
	return tap
}

// undoView is the key Undo. Where the newest entry is one that no hand takes
// back, such as a tag, it says of when the touch is that it would.
func (t *tarpScreen) undoView(n *now) parts.KeyView {
	v := parts.KeyView{ID: "undo", Title: words.L("Undo"), Icon: "undo"}
	tap, left := n.undoPast(t.left)
	if left == 0 {
		v.Second, v.Off = words.L("nothing"), true
		return v
	}
	v.Second = words.F("last of %d", left)
	for _, last := range n.taps(1) {
		if tapKey(last) == tap.Mends {
			continue
		}
		for _, e := range n.lastEntries(len(n.pic.Entries)) {
			if e.Tap == tap.Mends || e.ID.String() == tap.Mends {
				v.Second = words.F("of %s", n.clock(e.At()))
				break
			}
		}
	}
	if _, e := n.movedOn(tap); e != nil {
		v.Second = words.L("moved on")
	}
	return n.shutKey(v)
}

// movedOn tells whether the pieces that an undo would take back are no longer
// where the touch had put them: in words, and the entry it is about.
func (n *now) movedOn(tap board.Tap) (string, *model.Entry) {
	for _, a := range tap.Acts {
		i := n.d.ItemIndex(a.Item)
		from, err := n.s.Resolve(a.From, i, tap.Scene)
		if i < 0 || err != nil || n.s.Line(i).N(from) >= a.Quantity {
			continue
		}
		for k := len(n.pic.Entries) - 1; k >= 0; k-- {
			e := &n.pic.Entries[k]
			if e.Item == a.Item && (e.Tap == tap.Mends || e.ID.String() == tap.Mends) && len(e.Moves) > 0 {
				return words.F("%s moved on from %s: now %s.", n.d.Items[i].Short(), n.placeName(from), n.whereNow(i)), e
			}
		}
	}
	return "", nil
}

// whereNow is where the pieces of a line are, in words.
func (n *now) whereNow(i int) string {
	var out []string
	for _, st := range n.s.Line(i).Stacks {
		place := n.placeName(st.Place)
		if n.d.Items[i].Quantity > 1 {
			place = fmt.Sprintf("%d %s", st.N, place)
		}
		out = append(out, place)
	}
	return listed(out)
}

// calm lets go of what was asked, of what might go along and of what was only
// just staged.
func (t *tarpScreen) calm() {
	t.wave()
	t.ask, t.along, t.fresh, t.number.on = nil, nil, nil, false
}
