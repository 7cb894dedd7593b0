package ui

import (
	"fmt"
	"slices"

	"fyne.io/fyne/v2"

	"tarpside/model"
	"tarpside/ui/look"
	"tarpside/ui/parts"
	"tarpside/ui/words"
)

// handStrip is what is picked: its name, how many, and keys for handfuls.
type handStrip struct {
	*fyne.Container
	t     *tarpScreen
	panel *parts.Panel
	words *reading[pickedView]
	keys  []*parts.QuantityKey
	kit   *parts.Key
	drop  *parts.Key
	laid  [3]any // what the layout was made for
	shown int    // keys in use
	low   bool   // the words stand above the keys
	isKit bool   // the one thing picked is a kit
	other bool   // the last key is for another number
}

func newHandStrip(t *tarpScreen) *handStrip {
	h := &handStrip{t: t}
	h.panel = parts.NewPanel(parts.PanelView{Tone: parts.Live}, nil)
	h.words = newReading(paintPicked)
	for range 6 {
		h.keys = append(h.keys, parts.NewQuantityKey("", "", false, nil))
	}
	h.kit = parts.NewKey(parts.KeyView{ID: "open-kit", Title: words.L("Open"), Second: parts.Or(words.L("what is in it"), words.L("inside")), Icon: "kit", Lay: parts.LayStack}, h.openKit)
	h.drop = parts.NewKey(parts.KeyView{ID: "drop", Title: words.L("Drop"), Icon: "cross", Lay: parts.LayStack}, h.letGo)
	h.Container = box(h.layout, h.panel, h.words.obj, h.drop)
	return h
}

// wordsRoom is the least room for the words beside the keys, in design pixels.
const wordsRoom = 240

// layout puts the keys at the right end and the words before them; where they
// leave no room for the words, the words stand in one line above.
func (h *handStrip) layout(size fyne.Size) {
	pad, gap := look.U(8), look.U(look.Gap)
	least, most := look.U(look.Floor), look.U(look.Target)
	wide := least + pad
	if h.isKit {
		wide += most + gap
	}
	all, each := look.U(140), look.U(96)
	rest := float32(max(1, h.shown-1))
	if h.shown > 0 {
		wide += rest*(each+gap) + all + gap
	}
	y, keyH := pad, size.Height-2*pad
	place(h.panel, 0, 0, size.Width, size.Height)
	if h.low = h.shown > 0 && size.Width-wide < look.U(wordsRoom); h.low {
		pad = look.U(4)
		if size.Width-2*pad < float32(h.shown+1)*(least+gap)-gap {
			pad = look.U(2)
		}
		line := labelHigh()
		keyH = max(least, size.Height-line-look.U(8))
		y = size.Height - keyH - look.U(4)
		room := size.Width - 2*pad - least - gap*float32(h.shown)
		all = max(least, min(all, room-rest*least))
		each = (room - all) / rest
		place(h.words.obj, look.U(14), max(0, (y-line)/2), size.Width-look.U(28), line)
	} else if h.shown > 1 { // what the words do not need makes the keys as wide as a hand
		each = min(most, each+max(0, size.Width-wide-look.U(wordsRoom))/rest)
	}
	x := size.Width - pad - least
	place(h.drop, x, y, least, keyH)
	if h.isKit {
		x -= most + gap
		place(h.kit, x, y, most, keyH)
	}
	for i := h.shown - 1; i >= 0; i-- {
		w := each
		if h.isAll(i) {
			w = all
		}
		x -= w + gap
		place(h.keys[i], x, y, w, keyH)
	}
	if !h.low {
		place(h.words.obj, look.U(16), look.U(4), x-look.U(24), size.Height-look.U(8))
	}
}

// isAll tells whether a key of the strip is the one for all that are there.
func (h *handStrip) isAll(i int) bool {
	if h.other {
		i++
	}
	return i == h.shown-1
}

// show brings the strip up to date with what is picked.
func (h *handStrip) show(n *now) {
	picks := h.t.picks
	p := &picks[len(picks)-1]
	it := n.d.Item(p.item)
	objs := []fyne.CanvasObject{h.panel, h.words.obj, h.drop}
	h.isKit = len(picks) == 1 && it.Kind == model.Kit && p.from.Kind != model.With
	if h.isKit {
		objs = append(objs, h.kit)
	}
	objs = append(objs, h.showKeys(p)...)
	if laid := [3]any{h.shown, h.isKit, h.other}; laid != h.laid {
		h.laid, h.Objects = laid, objs
		relay(h.Container)
	}
	v := n.pickedView(picks)
	h.words.set(v, "picked", join(v.name, v.here, v.home))
}

// showKeys are the keys for so many of what was picked last.
func (h *handStrip) showKeys(p *pick) []fyne.CanvasObject {
	h.shown, h.other = 0, false
	if p.most < 2 {
		return nil
	}
	var objs []fyne.CanvasObject
	set := func(id, title, second string, on bool, do func()) {
		key := h.keys[h.shown]
		key.SetUnder(id, title, second, on)
		key.OnTap = do
		objs = append(objs, key)
		h.shown++
	}
	numbers := append(handful(p.most), p.most)
	for _, k := range numbers {
		title := fmt.Sprint(k)
		if k == p.most {
			title = parts.Or(words.F("All %d", k), words.F("All\n%d", k))
		}
		set(fmt.Sprint(k), title, "", p.n == k, func() { h.choose(k) })
	}
	if h.other = len(numbers) < p.most; h.other {
		on := !slices.Contains(numbers, p.n)
		title, second := otherKey(p.n, on)
		set("number", title, second, on, h.t.number.open)
	}
	return objs
}

func (h *handStrip) choose(k int) {
	h.t.picks[len(h.t.picks)-1].n = k
	h.t.sh.refresh()
}

func (h *handStrip) letGo() {
	h.t.picks = nil
	h.t.sh.refresh()
}

// openKit shows what is in the kit, to take a piece out or to use some.
func (h *handStrip) openKit() {
	h.t.shown, h.t.door = model.Place{Kind: model.InKit, Name: h.t.picks[0].item}, ""
	h.t.picks = nil
	h.t.tiles.FirstPage()
	h.t.sh.refresh()
}
