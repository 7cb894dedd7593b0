package ui

import (
	"fmt"
	"strings"

	"fyne.io/fyne/v2"

	"tarpside/ui/look"
	"tarpside/ui/parts"
	"tarpside/ui/words"
)

// gaugesDrawn is the panel of what runs down.
type gaugesDrawn struct {
	Read   []gaugeView
	Unread string
}

// newGaugePanel is what runs down on Glance. A touch opens all of it, with how
// each figure was got.
func newGaugePanel(touched func()) *touchReading[gaugesDrawn] {
	return newTouchReading(2*look.Target, look.Target, paintGauges, touched)
}

// first is the item of the first reading, "" if there is none.
func (v *gaugesDrawn) first() string {
	if len(v.Read) == 0 {
		return ""
	}
	return v.Read[0].Item
}

// gaugeWords is the panel of readings as one text.
func gaugeWords(read []gaugeView, unread string) string {
	var out []string
	for _, g := range read {
		out = append(out, fmt.Sprintf("%s, %s: %s. %s", g.Name, g.Place, low(g.figure()), g.when()))
	}
	if unread != "" {
		out = append(out, words.F("Not read: %s", unread))
	}
	if len(out) == 0 {
		return words.L("No gauge is out")
	}
	return strings.Join(out, ". ")
}

func paintGauges(v *gaugesDrawn, p *parts.Pen, size fyne.Size) {
	x := look.U(14)
	w := size.Width - x
	p.Fill(0, 0, look.U(1), size.Height-look.U(8), look.Line)
	head := p.Write(words.L("Running down"), parts.Ink{Role: look.TileName, Lines: 1}, x, look.U(4), w, 0)
	p.Icon("go", look.Dim, size.Width-look.U(30), look.U(4), look.U(26))
	if room := w - head.W - look.U(44); fitsOn(p, words.L("how it was got"), look.Body, room, 1) {
		p.Write(words.L("how it was got"), parts.Ink{Role: look.Body, Color: look.Dim, Lines: 1}, x+head.W+look.U(10), look.U(6), room, 0)
	}
	y := max(look.U(34), look.U(4)+head.H)
	room := size.Height - look.U(8)
	if len(v.Read) == 0 && v.Unread == "" {
		p.Write(words.L("Nothing with a gauge is out."), parts.Ink{Role: look.Body}, x, y, w, 0)
		return
	}
	room -= look.U(28) // for what was not read
	hidden := 0
	for i, g := range v.Read {
		need := look.U(43)
		if i == 0 && g.Low {
			need = look.U(78)
			if size.Height >= look.U(170) {
				need = look.U(92) // its figure decides: the largest there is
			}
		}
		if y+need > room && i > 0 {
			hidden = len(v.Read) - i
			break
		}
		if i == 0 && g.Low {
			paintWorst(g, p, x, y, w, need)
		} else {
			paintGauge(g, p, x, y, w, need)
		}
		y += need + look.U(3)
	}
	paintUnread(v, hidden, p, x, y, w, size.Height-look.U(8)-y)
}

// paintUnread names what was never read, and counts the readings that had no
// room.
func paintUnread(v *gaugesDrawn, hidden int, p *parts.Pen, x, y, w, h float32) {
	first := ""
	if hidden > 0 {
		first = parts.B(words.N("%d more reading", "%d more readings", hidden)) + ". "
	}
	var all []string
	if v.Unread != "" {
		all = strings.Split(v.Unread, ", ")
	}
	if first == "" && len(all) == 0 {
		return
	}
	p.Icon("clock", look.Text, x, y+look.U(1), look.U(24))
	x, w = x+look.U(36), w-look.U(36)
	text := longest(p, len(all), look.Body, w, max(1, int(h/look.U(23))), func(k int) string {
		switch {
		case len(all) == 0:
			return first
		case k == 0 && first != "":
			return parts.Or(first, "") + parts.B(words.F("%d not read", len(all)))
		case k == 0:
			return parts.B(words.N("%d gauge not read", "%d gauges not read", len(all)))
		case k < len(all):
			return first + words.F("%s %s, %d more", parts.B(words.L("Not read:")), strings.Join(all[:k], ", "), len(all)-k)
		}
		return first + parts.B(words.L("Not read:")) + " " + strings.Join(all, ", ")
	})
	p.Write(text, parts.Ink{Role: look.Body}, x, y, w, max(h, look.U(23)))
}

// paintWorst draws the lowest reading large, on the ground of an alarm.
func paintWorst(g gaugeView, p *parts.Pen, x, y, w, h float32) {
	p.Rect(x, y, w, h, look.AlarmGround, look.Alarm, look.U(2), look.U(look.RadiusPanel))
	in := look.U(12)
	big, small := g.Figure, g.Unit
	if g.Timed && g.Till != "" {
		big, small = fmt.Sprint(g.Left), words.L("min")
	}
	role := look.Hand
	if h >= look.U(92) && len(big) < 3 {
		role = look.Figure
	}
	fig := p.Middle(big, parts.Ink{Role: role, Color: look.Alarm, Lines: 1}, x+in, y, w*0.4, h)
	unit := p.Fit(small, parts.Ink{Role: look.Body, Lines: 1}, w*0.2, 0)
	p.Put(unit, x+in+fig.W+look.U(6), y+(h+fig.H)/2-fig.H*0.24-unit.H*0.75, unit.W)
	tx := x + in + fig.W + unit.W + look.U(20)
	tw := x + w - tx - look.U(8)
	under := look.Small
	if h >= look.U(92) && fitsOn(p, g.when(), look.Body, tw, 2) {
		under = look.Body
	}
	p.Stack(tx, y, tw, h, p.Fit(g.Name+", "+g.Place, parts.Ink{Role: look.BodyBold, Lines: 2}, tw, h*0.6),
		p.Fit(g.shortest(p, look.Small, tw, 2), parts.Ink{Role: under, Lines: 2}, tw, h*0.6))
}

func paintGauge(g gaugeView, p *parts.Pen, x, y, w, h float32) {
	color, icon := look.Text, "clock"
	if g.Low {
		color, icon = look.Alarm, "hourglass"
	}
	p.Icon(icon, color, x, y+(h-look.U(26))/2, look.U(26))
	tx := x + look.U(36)
	tw := w - look.U(38)
	title := g.Name + ", " + g.Place + ": " + low(g.figure())
	if !fitsOn(p, title, look.BodyBold, tw, 1) {
		title = parts.Or(g.Name+": "+low(g.figure()), g.Name)
	}
	p.Stack(tx, y, tw, h, p.Fit(title, parts.Ink{Role: look.BodyBold, Color: color, Lines: 1}, tw, 0),
		p.Fit(g.shortest(p, look.Small, tw, 1), parts.Ink{Role: look.Small, Lines: 1}, tw, 0))
}

// shortest is what was read and when, with how its time was got where there is
// room for that.
func (g gaugeView) shortest(p *parts.Pen, role look.Role, w float32, lines int) string {
	all := g.when()
	if fitsOn(p, all, role, w, lines) {
		return all
	}
	if g.Till == "" { // then the color says that it is low
		return words.F("Read %s", g.At)
	}
	return strings.TrimSuffix(all, ", "+g.By)
}
