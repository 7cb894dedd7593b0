package paper

import (
	"fmt"
	"image/color"

	"github.com/boombuler/barcode"
	"github.com/boombuler/barcode/code128"
	"github.com/boombuler/barcode/qr"

	"tarpside/model/code"
)

// A stock is a sheet of labels as stationers sell it, in points: so many
// across and down, in the middle of the sheet.
type stock struct {
	across, down   int
	width, height  float64
	pitchX, pitchY float64
}

// labelStock is 30 labels of 2 5/8 by 1 inch on letter, 24 of 63.5 by 33.9 mm
// on A4: common sizes, from memory.
func labelStock(s Sheet) stock {
	if s.Name == A4.Name {
		return stock{3, 8, 63.5 * mm, 33.9 * mm, 66.04 * mm, 33.9 * mm}
	}
	return stock{3, 10, 189, 72, 198, 72}
}

// A label is one sticker: its code, what is read out, and what it is.
type label struct{ code, id, name string }

// labels of a rig: each slot with what lives in it behind it.
func (m *maker) labels(rig string) (out []label) {
	add := func(rows []row) {
		for _, r := range rows {
			it := m.d.Item(r.cells[3])
			name := it.Name
			if it.Quantity > 1 {
				name = fmt.Sprintf("%s (%d)", name, it.Quantity)
			}
			out = append(out, label{code.Label(code.Piece, it.ID), it.ID, name})
		}
	}
	for _, d := range m.doors(rig) {
		for _, s := range d.slots {
			name := d.compartment + sideWords(d.side)
			if s.Description != "" {
				name += ": " + s.Description
			}
			out = append(out, label{code.Label(code.Slot, s.ID), s.ID, "SLOT " + name})
			add(m.living(rig, s.ID))
		}
	}
	add(m.living(rig, ""))
	return out
}

func (m *maker) labelsQR(rig string) Paper {
	return m.labelPaper("labels-qr", "QR labels", rig, qrLabel)
}

func (m *maker) labelsBars(rig string) Paper {
	return m.labelPaper("labels-bars", "Bar labels", rig, barLabel)
}

func (m *maker) labelPaper(kind, title, rig string, draw func(*press, label, float64, float64, stock)) Paper {
	return m.paper(kind, rig, title, func(p *press) {
		p.without = true
		st := labelStock(p.sheet)
		left := (p.sheet.Width - float64(st.across-1)*st.pitchX - st.width) / 2
		top := (p.sheet.Height - float64(st.down-1)*st.pitchY - st.height) / 2
		all := m.labels(rig)
		for n, l := range all {
			k := n % (st.across * st.down)
			if k == 0 {
				p.page()
			}
			draw(p, l, left+float64(k%st.across)*st.pitchX, top+float64(k/st.across)*st.pitchY, st)
		}
		if len(all) == 0 {
			p.page()
			p.say("It has no slot and no piece in the tables.")
		}
	})
}

// qrLabel has the symbol at the left, with the four modules of quiet that ISO
// 18004 asks for, and words beside it.
func qrLabel(p *press, l label, x, y float64, st stock) {
	b, err := qr.Encode(l.code, qr.M, qr.Auto)
	if err != nil {
		p.SetError(err)
		return
	}
	n := b.Bounds().Dx()
	module := (st.height - 6) / float64(n+8)
	side := module * float64(n+8)
	symbol(p, b, x+3+4*module, y+3+4*module, module, module)
	at, width := x+side+6, st.width-side-12
	p.y = y + 8
	p.lines(bold, body, at, width, l.id, 1)
	p.lines(plain, 9.5, at, width, l.name, 2)
	p.set(plain, small)
	p.show(at, y+st.height-8, p.draw(l.code))
}

// barLabel has words above and a Code 128 below, with ten modules of quiet at
// either end as ISO 15417 asks for.
func barLabel(p *press, l label, x, y float64, st stock) {
	b, err := code128.Encode(l.code)
	if err != nil {
		p.SetError(err)
		return
	}
	n := float64(b.Bounds().Dx())
	module := min(1.2, (st.width-4)/(n+20))
	tall := st.height * 0.42
	p.y = y + 5
	p.set(plain, small)
	typed := p.GetStringWidth(l.code)
	p.show(x+st.width-8-typed, p.y+body, l.code)
	p.lines(bold, body, x+8, st.width-24-typed, l.id, 1)
	p.lines(plain, 9, x+8, st.width-16, l.name, 1)
	symbol(p, b, x+(st.width-module*n)/2, y+st.height-tall-6, module, tall)
}

// symbol draws the dark modules, each run of a row as one bar.
func symbol(p *press, b barcode.Barcode, x, y, w, h float64) {
	p.SetFillColor(0, 0, 0)
	r := b.Bounds()
	for row := r.Min.Y; row < r.Max.Y; row++ {
		for from := r.Min.X; from < r.Max.X; from++ {
			to := from
			for to < r.Max.X && dark(b.At(to, row)) {
				to++
			}
			if to > from {
				p.Rect(x+float64(from-r.Min.X)*w, y+float64(row-r.Min.Y)*h, float64(to-from)*w, h, "F")
				from = to
			}
		}
	}
}

func dark(c color.Color) bool { return color.GrayModel.Convert(c).(color.Gray).Y < 128 }
