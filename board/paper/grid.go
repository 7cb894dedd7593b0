package paper

// A column of a list. Its width is a share of what the boxes leave.
type column struct {
	title string
	share float64
	right bool // figures stand under each other
	bold  bool
	tick  bool // a box instead of words, unless the cell has words
	line  bool // words have a line below them to write on
}

// A row of a list: a cell for each column. Deep rows are set in. A span stands
// over all columns instead.
type row struct {
	cells []string
	deep  bool
	span  string
}

// most is how many lines a cell has at most; a longer one ends in three points.
const most = 12

// list prints rows under their titles, which stand on every page again. Rows
// are as high as a box, so that each can be ticked or written on.
func (p *press) list(columns []column, rows []row) {
	x, w := p.columns(columns)
	titles := func() {
		p.set(bold, small)
		for i, c := range columns {
			text := p.cut(p.draw(c.title), w[i])
			at := x[i]
			if c.right {
				at += w[i] - p.GetStringWidth(text)
			}
			p.show(at, p.y+small+1, text)
		}
		p.y += small + 5
		p.Line(p.left, p.y, p.right, p.y)
	}
	p.room(small + 8 + box + 8)
	titles()
	was := p.onPage
	p.onPage = titles
	for _, r := range rows {
		p.row(columns, x, w, r)
	}
	p.onPage = was
}

// columns places columns side by side.
func (p *press) columns(columns []column) (x, w []float64) {
	free, shares := p.right-p.left-gap*float64(len(columns)-1), 0.0
	for _, c := range columns {
		if c.tick {
			free -= box
		}
		shares += c.share
	}
	at := p.left
	for _, c := range columns {
		width := box
		if !c.tick {
			width = free * c.share / shares
		}
		x, w = append(x, at), append(w, width)
		at += width + gap
	}
	return x, w
}

func (p *press) row(columns []column, x, w []float64, r row) {
	const leading = body * 1.2
	deep := 1
	if r.span != "" {
		p.span(r.span)
		return
	}
	p.room(box + 8)
	cells := make([][]string, len(columns))
	for i, c := range columns {
		if r.cells[i] == "" {
			continue
		}
		p.set(c.face(), body)
		width := w[i]
		if i == r.inset(columns) {
			width -= 14
		}
		cells[i] = p.wrap(p.draw(r.cells[i]), width)
		if n := len(cells[i]); n > most {
			cells[i] = append(cells[i][:most-1], p.cut(cells[i][most-1]+" "+cells[i][most], width))
		}
		deep = max(deep, len(cells[i]))
	}
	height := max(box+6, float64(deep)*leading+8)
	if p.y+height > p.bottom {
		p.page()
		for i := range cells { // what the print cannot draw is told on this page too
			p.draw(r.cells[i])
		}
	}
	for i, c := range columns {
		p.cell(c, x[i], w[i], height, cells[i], i == r.inset(columns))
	}
	p.y += height
	p.SetLineWidth(0.3)
	p.Line(p.left, p.y, p.right, p.y)
	p.SetLineWidth(0.8)
}

// span prints a line over all columns, together with room for a row.
func (p *press) span(text string) {
	p.room(2*box + 14)
	p.SetFillColor(225, 225, 225)
	p.Rect(p.left, p.y, p.right-p.left, body+9, "F")
	p.set(bold, body)
	p.show(p.left+3, p.y+body+3, p.cut(p.draw(text), p.right-p.left-6))
	p.y += body + 9
}

// inset is the column that is set in for a deep row, -1 if none is.
func (r row) inset(columns []column) int {
	if !r.deep {
		return -1
	}
	most := 0
	for i, c := range columns {
		if c.share > columns[most].share {
			most = i
		}
	}
	return most
}

func (c column) face() face {
	if c.bold {
		return bold
	}
	return plain
}

func (p *press) cell(c column, x, w, height float64, lines []string, inset bool) {
	const leading = body * 1.2
	if len(lines) == 0 {
		if c.tick {
			p.tick(x, p.y+3)
		}
		return
	}
	if c.line {
		p.Line(x, p.y+height-3, x+w, p.y+height-3)
	}
	p.set(c.face(), body)
	if inset {
		x += 14
	}
	y := p.y + body + 3
	if len(lines) == 1 {
		y = p.y + box/2 + body/2 + 1
	}
	for _, l := range lines {
		at := x
		if c.right {
			at = x + w - p.GetStringWidth(l)
		}
		p.show(at, y, l)
		y += leading
	}
}
