package ui

import (
	"fyne.io/fyne/v2"

	"tarpside/ui/look"
	"tarpside/ui/parts"
	"tarpside/ui/words"
)

// cardScreen draws the outline of a bank card. A card laid on the glass tells
// how large a pixel is there, and every target follows.
type cardScreen struct {
	sh      *Shell
	root    *fyne.Container
	outline *reading[cardView]
	steps   [4]*parts.Key
	words   *parts.Label
	keep    *parts.Key
	usual   *parts.Key
	px      float32 // of the outline's long side
}

// cardView is the outline.
type cardView struct{ px float32 }

// cardSteps are what the keys do to the outline.
var cardSteps = [4]struct {
	id, title string
	by        float32
}{{"much-smaller", words.K("Much smaller"), 1 / 1.1}, {"much-larger", words.K("Much larger"), 1.1}, {"smaller", words.K("A little smaller"), 1 / 1.01}, {"larger", words.K("A little larger"), 1.01}}

func newCard(sh *Shell) *cardScreen {
	c := &cardScreen{sh: sh, px: look.MM(cardLong)}
	c.outline = newReading(paintCard)
	for i, s := range cardSteps {
		c.steps[i] = parts.NewKey(parts.KeyView{ID: s.id, Title: words.L(s.title), Lay: parts.LayCentre, Role: look.BodyBold}, func() {
			c.px = min(max(c.px*s.by, cardPx(72)), cardPx(400))
			sh.refresh()
		})
	}
	c.words = parts.NewLines(parts.LabelView{ID: "card-words", Role: look.Lead})
	c.keep = parts.NewKey(parts.KeyView{}, c.done)
	c.usual = parts.NewKey(parts.KeyView{ID: "usual", Title: words.L("As it came"), Second: words.L("without a card"), Lay: parts.LayCentre}, func() {
		sh.over = nil
		sh.setCard(cardPx(look.PerInch))
	})
	c.root = box(c.layout, c.outline.obj, c.words, c.keep, c.usual)
	for _, k := range c.steps {
		c.root.Add(k)
	}
	return c
}

// cardPx is the long side of a card on a glass with so many pixels an inch.
func cardPx(perInch float32) float32 { return perInch * cardLong / 25.4 }

func (c *cardScreen) body() fyne.CanvasObject { return c.root }

func (c *cardScreen) layout(size fyne.Size) {
	gap, h := look.U(look.Gap), look.U(look.Floor)
	side := look.U(296)
	x := size.Width - side
	place(c.outline.obj, 0, 0, x-gap, size.Height)
	w := (side - gap) / 2
	for i, k := range c.steps {
		place(k, x+float32(i%2)*(w+gap), float32(i/2)*(h+gap), w, h)
	}
	y := 2 * (h + gap)
	place(c.keep, x, size.Height-h, side, h)
	place(c.usual, x, size.Height-2*h-gap, side, h)
	place(c.words, x, y, side, size.Height-2*(h+gap)-y)
}

func paintCard(v *cardView, p *parts.Pen, size fyne.Size) {
	w, h := v.px, v.px*cardShort/cardLong
	const corner = 3.18 // mm, from memory of the same standard
	p.Rect(0, 0, size.Width, size.Height, look.Surface, look.Line, look.U(1), look.U(look.RadiusPanel))
	x, y := (size.Width-w)/2, (size.Height-h)/2
	p.Rect(x, y, w, h, look.Ground, look.Accent, look.U(3), w*corner/cardLong)
	p.Middle(words.L("Lay a bank card here"), parts.Ink{Role: look.Name, Align: fyne.TextAlignCenter}, x+look.U(16), y, w-look.U(32), h)
}

// show brings the outline up to date.
func (c *cardScreen) show(n *now) head {
	c.outline.set(cardView{c.px}, "card", words.F("Outline of a bank card, %.0f pixels wide", c.px))
	c.words.SetText(c.sizeWords(n.root.Size()))
	c.keep.Set(parts.KeyView{ID: "keep", Title: words.L("It fits: keep"), Icon: "tick", Tone: parts.Filled, Lay: parts.LayCentre, Role: look.Name})
	return head{title: words.L("Size by bank card"), sentence: words.L("Make the outline as large as the card, then keep it"), back: true}
}

// sizeWords is how large what is touched will be on this glass.
func (c *cardScreen) sizeWords(window fyne.Size) string {
	most := mostCard(window)
	mm := float32(20.1) // 118 design pixels
	if c.px <= most {
		return words.F("A piece or a place will be %.0f mm on this glass.", mm)
	}
	return words.F("This window has no room for keys of %.0f mm. A piece or a place will be %.0f mm.", mm, mm*most/c.px)
}

func (c *cardScreen) done() {
	c.sh.over = nil
	c.sh.setCard(min(c.px, mostCard(c.sh.root.Size())))
}
