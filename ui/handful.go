package ui

import (
	"fmt"

	"fyne.io/fyne/v2"

	"tarpside/model"
	"tarpside/ui/look"
	"tarpside/ui/parts"
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
	shown int  // keys in use
	isKit bool // the one thing picked is a kit
}

func newHandStrip(t *tarpScreen) *handStrip {
	h := &handStrip{t: t}
	h.panel = parts.NewPanel(parts.PanelView{Tone: parts.Live}, nil)
	h.words = parts.NewLines(parts.LabelView{ID: "picked", Role: look.Body, Mid: true})
	for range 5 {
		h.keys = append(h.keys, parts.NewQuantityKey("", "", false, nil))
	}
	h.kit = parts.NewKey(parts.KeyView{ID: "open-kit", Title: "Open", Second: "what is in it", Icon: "kit", Lay: parts.LayStack}, h.openKit)
	h.drop = parts.NewKey(parts.KeyView{ID: "drop", Title: "Drop", Icon: "cross", Lay: parts.LayStack}, h.letGo)
	h.Container = box(h.layout, h.panel, h.words, h.drop)
	return h
}

func (h *handStrip) layout(size fyne.Size) {
	pad, gap := look.U(8), look.U(look.Gap)
	keyH := size.Height - 2*pad
	place(h.panel, 0, 0, size.Width, size.Height)
	x := size.Width - pad - look.U(look.Floor)
	place(h.drop, x, pad, look.U(look.Floor), keyH)
	if h.isKit {
		x -= look.U(look.Target) + gap
		place(h.kit, x, pad, look.U(look.Target), keyH)
	}
	for i := h.shown - 1; i >= 0; i-- {
		w := look.U(96)
		if i == h.shown-1 {
			w = look.U(140)
		}
		x -= w + gap
		place(h.keys[i], x, pad, w, keyH)
	}
	place(h.words, look.U(16), pad, x-look.U(24), keyH)
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
	text := fmt.Sprintf("%s\n%d of %d here picked", parts.B(it.Short()), p.n, p.most)
	if it.Quantity == 1 {
		text = parts.B(it.Short()) + "\npicked"
	}
	if len(picks) > 1 {
		text = fmt.Sprintf("%s\nthe last: %s", parts.B(fmt.Sprintf("%d pieces picked", len(picks))), it.Short())
	}
	h.words.Set(parts.LabelView{ID: "picked", Role: look.Lead, Mid: true, Text: text})
	numbers := handful(p.most)
	h.shown = 0
	if p.most > 1 {
		for _, k := range append(numbers, p.most) {
			title := fmt.Sprint(k)
			if k == p.most {
				title = "All " + title
			}
			key := h.keys[h.shown]
			key.Set(fmt.Sprint(k), title, p.n == k)
			key.OnTap = func() { h.choose(k) }
			objs = append(objs, key)
			h.shown++
		}
	}
	h.Objects = objs
	relay(h.Container)
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
	h.t.shown = model.Place{Kind: model.InKit, Name: h.t.picks[0].item}
	h.t.picks = nil
	h.t.tiles.FirstPage()
	h.t.sh.refresh()
}
