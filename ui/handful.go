package ui

import (
	"fmt"
	"strings"

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
	words *parts.Label
	keys  []*parts.QuantityKey
	kit   *parts.Key
	drop  *parts.Key
	laid  [2]any // what the layout was made for
	shown int    // keys in use
	low   bool   // the words stand above the keys
	isKit bool   // the one thing picked is a kit
}

func newHandStrip(t *tarpScreen) *handStrip {
	h := &handStrip{t: t}
	h.panel = parts.NewPanel(parts.PanelView{Tone: parts.Live}, nil)
	h.words = parts.NewLines(parts.LabelView{ID: "picked", Role: look.Body, Mid: true})
	for range 5 {
		h.keys = append(h.keys, parts.NewQuantityKey("", "", false, nil))
	}
	h.kit = parts.NewKey(parts.KeyView{ID: "open-kit", Title: words.L("Open"), Second: parts.Or(words.L("what is in it"), words.L("inside")), Icon: "kit", Lay: parts.LayStack}, h.openKit)
	h.drop = parts.NewKey(parts.KeyView{ID: "drop", Title: words.L("Drop"), Icon: "cross", Lay: parts.LayStack}, h.letGo)
	h.Container = box(h.layout, h.panel, h.words, h.drop)
	return h
}

// layout puts the keys at the right end and the words before them; where they
// leave no room for the words, the words stand in one line above.
func (h *handStrip) layout(size fyne.Size) {
	pad, gap := look.U(8), look.U(look.Gap)
	wide := look.U(look.Floor) + pad
	if h.isKit {
		wide += look.U(look.Target) + gap
	}
	if h.shown > 0 {
		wide += float32(h.shown-1)*(look.U(96)+gap) + look.U(140) + gap
	}
	y, keyH, keyW, allW := pad, size.Height-2*pad, look.U(96), look.U(140)
	place(h.panel, 0, 0, size.Width, size.Height)
	if h.low = size.Width-wide < look.U(150); h.low {
		pad = look.U(4)
		keyH = max(look.U(look.Floor), size.Height-look.U(32)-2*pad)
		y = size.Height - keyH - pad
		keyW = min(keyW, (size.Width-2*pad-look.U(look.Floor)-allW-gap*float32(h.shown))/float32(max(1, h.shown-1)))
		place(h.words, look.U(14), look.U(2), size.Width-look.U(28), y-look.U(2))
	} else if h.shown > 1 { // what the words do not need makes the keys as wide as a hand
		keyW = min(look.U(look.Target), keyW+max(0, size.Width-wide-look.U(200))/float32(h.shown-1))
	}
	x := size.Width - pad - look.U(look.Floor)
	place(h.drop, x, y, look.U(look.Floor), keyH)
	if h.isKit {
		x -= look.U(look.Target) + gap
		place(h.kit, x, y, look.U(look.Target), keyH)
	}
	for i := h.shown - 1; i >= 0; i-- {
		w := keyW
		if i == h.shown-1 {
			w = allW
		}
		x -= w + gap
		place(h.keys[i], x, y, w, keyH)
	}
	if !h.low {
		place(h.words, look.U(16), pad, x-look.U(24), keyH)
	}
}

// show brings the strip up to date with what is picked.
func (h *handStrip) show(n *now) {
	picks := h.t.picks
	p := &picks[len(picks)-1]
	it := n.d.Item(p.item)
	objs := []fyne.CanvasObject{h.panel, h.words, h.drop}
	h.isKit = len(picks) == 1 && it.Kind == model.Kit && p.from.Kind != model.With
	if h.isKit {
		objs = append(objs, h.kit)
	}
	text := words.F("%s\n%d of %d here picked", parts.B(it.Short()), p.n, p.most)
	if it.Quantity == 1 {
		text = words.F("%s\npicked", parts.B(it.Short()))
	}
	if len(picks) > 1 {
		text = words.F("%s\nthe last: %s", parts.B(words.F("%d pieces picked", len(picks))), it.Short())
	}
	numbers := handful(p.most)
	h.shown = 0
	if p.most > 1 {
		for _, k := range append(numbers, p.most) {
			title := fmt.Sprint(k)
			if k == p.most {
				title = words.F("All %d", k)
			}
			key := h.keys[h.shown]
			key.Set(fmt.Sprint(k), title, p.n == k)
			key.OnTap = func() { h.choose(k) }
			objs = append(objs, key)
			h.shown++
		}
	}
	if laid := [2]any{h.shown, h.isKit}; laid != h.laid {
		h.laid, h.Objects = laid, objs
		relay(h.Container)
	}
	v := parts.LabelView{ID: "picked", Role: look.Lead, Mid: true, Text: text}
	if h.low {
		v.Role, v.Lines, v.Text = look.Body, 1, strings.Replace(text, "\n", "   ", 1)
	}
	h.words.Set(v)
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
