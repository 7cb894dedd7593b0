package ui

import (
	"fmt"
	"strconv"

	"fyne.io/fyne/v2"

	"tarpside/ui/look"
	"tarpside/ui/parts"
	"tarpside/ui/words"
)

// handPad types how many of a counted line are meant, where no key of the
// strip says it. The places stay beside it: a digit and a place are enough.
type handPad struct {
	*fyne.Container
	t     *tarpScreen
	on    bool
	typed string
	out   *parts.Readout
	words *parts.Label
	pad   *parts.DigitPad
	drop  *parts.Key
}

// handDigits is the most digits that are typed.
const handDigits = 4

func newHandPad(t *tarpScreen) *handPad {
	h := &handPad{t: t}
	h.out = parts.NewReadout(parts.ReadoutView{ID: "number"})
	h.words = parts.NewLines(parts.LabelView{ID: "number-words", Role: look.Open})
	h.pad = parts.NewDigitPad(h.key)
	h.drop = parts.NewKey(parts.KeyView{ID: "drop", Title: words.L("Drop"), Icon: "cross", Lay: parts.LayCentre}, t.hand.letGo)
	h.Container = box(func(size fyne.Size) { layPad(size, h.pad, h.out, h.words, h.drop) }, h.pad, h.out, h.words, h.drop)
	return h
}

// open asks for the number of what was picked last.
func (h *handPad) open() {
	h.on, h.typed = true, ""
	h.t.sh.refresh()
}

// number is what is typed; false while that is no number of what is here.
func (h *handPad) number() (int, bool) {
	k, err := strconv.Atoi(h.typed)
	return k, err == nil && k >= 1 && k <= h.most()
}

// most is how many are here of what was picked last.
func (h *handPad) most() int {
	if k := len(h.t.picks); k > 0 {
		return h.t.picks[k-1].most
	}
	return 0
}

// wrong tells whether a number is typed that cannot be sent.
func (h *handPad) wrong() bool {
	_, ok := h.number()
	return h.on && h.typed != "" && !ok
}

func (h *handPad) key(id string) {
	switch {
	case id == "done":
		h.on = false
	case id == "delete":
		h.typed = h.typed[:max(len(h.typed)-1, 0)]
	case len(h.typed) < handDigits:
		h.typed += id
	}
	if k, ok := h.number(); ok {
		h.t.picks[len(h.t.picks)-1].n = k
	}
	h.t.sh.refresh()
}

// show brings the pad up to date.
func (h *handPad) show(n *now) {
	p := h.t.picks[len(h.t.picks)-1]
	name := parts.B(n.whoseName(n.d.Item(p.item)))
	text := words.F("%s\nHow many? %d are here. Then touch the place.", name, p.most)
	out := parts.ReadoutView{ID: "number", Text: h.typed, Tone: parts.Live, Role: look.Hand}
	if h.wrong() {
		text, out.Tone = words.F("%s\nNot %s: %d are here.", name, h.typed, p.most), parts.Alarm
	}
	h.out.Set(out)
	h.words.SetText(text)
	h.pad.SetDone(parts.Usual, h.typed == "" || h.wrong())
}

// shutPlaces shuts what a touch would send to while the number is wrong.
func shutPlaces(keys []parts.PlaceKeyView, most int) []parts.PlaceKeyView {
	for i := range keys {
		if m := keys[i].Mode; m == parts.PlaceTarget || m == parts.PlaceLikeliest {
			keys[i].Mode, keys[i].Verb = parts.PlaceShut, words.F("%d here", most)
		}
	}
	return keys
}

// otherKey is the key that opens the pad. It shows the number that was typed
// where no other key does.
func otherKey(k int, on bool) (title, second string) {
	if on {
		return fmt.Sprint(k), words.L("other")
	}
	return "123", words.L("other")
}
