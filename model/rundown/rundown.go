// Package rundown is what runs down at a scene: the readings of the pieces
// that are out, put into the sums of gauge, and pieces that are out longer
// than their class may be. It is about pieces, never about people: breathing
// air is stock here.
package rundown

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"tarpside/model"
	"tarpside/model/gauge"
	"tarpside/model/sum"
)

// A Figure is a piece with a gauge that is out, and what its readings say.
// Times in Unix milliseconds, spans in minutes.
type Figure struct {
	Line     int
	Place    model.Place
	Working  bool // at a place of the scene: it is taken to run since it was read
	Check    string
	Read     bool
	Answer   model.Answer // the newest reading
	At       int64        // when it was read
	Since    int64        // since when it is where it is
	Readings int          // readings that the figure rests on
	Limit    float64      // of the inventory
	HasLimit bool
	Under    bool // the reading is under it

	Sum      sum.Answer // the time at the reading, how it was got, or why there is none
	Timed    bool       // a time can be said
	Measured bool       // by its own readings, not by a table
	Left     float64    // minutes left now, rounded down
	Least    float64    // the lower end of its range
	Until    int64      // when it is used up but for what is kept back
	Warn     bool       // at work, and the least is within the minutes at which to warn
}

// Stock tells whether the figure is breathing air, which has no time.
func (f *Figure) Stock() bool { return f.Check == air }

// The checks that the sums know, by their ids.
const (
	oxygen  = "oxygen"
	air     = "air"
	battery = "battery"
	bars    = "bars"
	fuel    = "fuel"
)

// point is one reading of a line.
type point struct {
	at     int64
	answer model.Answer
	flow   float64 // L/min; below 0 nobody wrote it
}

// Figures are the pieces with a gauge that are on the tarp or at a place of
// the scene: those that warn first, then by the time left at work, then the
// others in the order of the inventory.
func Figures(s *model.State, entries []model.Entry, scene string, at int64, lim Limits) []Figure {
	h := follow(s, entries, scene)
	var out []Figure
	for i := range s.Dept.Items {
		ask, ok := Gauge(s.Dept, &s.Dept.Items[i])
		if !ok {
			continue
		}
		p := s.Real(whereOut(s, i))
		if p.Kind != model.Tarp && p.Kind != model.At {
			continue
		}
		f := Figure{Line: i, Place: p, Working: p.Kind == model.At, Check: ask.Check, Since: h.since[i]}
		f.Limit, f.HasLimit = ask.Limit, ask.HasLimit
		if points := h.points[i]; len(points) > 0 {
			f.take(s.Dept, points, at, lim)
		}
		out = append(out, f)
	}
	slices.SortStableFunc(out, worst)
	return out
}

// worst orders figures: what warns, what is at work, what has a time, the
// least of it first; then what is under its limit, and what was read.
func worst(a, b Figure) int {
	rank := func(f *Figure) int {
		k := 0
		for i, yes := range []bool{f.Read, f.Under, f.Timed, f.Working, f.Warn} {
			if yes {
				k += 1 << i
			}
		}
		return -k
	}
	return cmp.Or(rank(&a)-rank(&b), cmp.Compare(a.Least, b.Least), a.Line-b.Line)
}

// Gauge is the first check of an item that is a number.
func Gauge(d *model.Department, it *model.Item) (model.Ask, bool) {
	for _, a := range it.Checks {
		if c := d.Check(a.Check); c != nil && c.Number {
			return a, true
		}
	}
	return model.Ask{}, false
}

// Newest is the newest reading of a line in a scene, wherever the line has
// gone since.
func Newest(d *model.Department, entries []model.Entry, scene string, line int) (model.Answer, bool) {
	it := &d.Items[line]
	ask, ok := Gauge(d, it)
	for k := len(entries) - 1; k >= 0 && ok; k-- {
		e := &entries[k]
		if e.Scene != scene || e.Item != it.ID || e.Reading == "" {
			continue
		}
		answers, err := model.ParseReading(d, e.Reading, e.Verb == model.Stow)
		if err != nil {
			continue
		}
		for _, a := range answers {
			if a.Check == ask.Check {
				return a, true
			}
		}
	}
	return model.Answer{}, false
}

// whereOut is a place of the line other than its home, or home.
func whereOut(s *model.State, i int) model.Place {
	home := s.HomeOf(i)
	for _, st := range s.Line(i).Stacks {
		if st.Place != home {
			return st.Place
		}
	}
	return home
}

// history is what the entries say of each line.
type history struct {
	points map[int][]point
	since  map[int]int64
	seen   map[int]int64 // moved, read or looked at last
}

// follow reads the entries of a scene once. A line that went home, to a
// charger or into a bag begins anew: what is read then is another fill.
func follow(s *model.State, entries []model.Entry, scene string) history {
	h := history{map[int][]point{}, map[int]int64{}, map[int]int64{}}
	for k := range entries {
		e := &entries[k]
		if e.Scene != scene {
			continue
		}
		if e.Taken() {
			for _, m := range e.Moves {
				if i := s.Dept.ItemIndex(m.Item); i >= 0 {
					h.moved(s.Dept, i, m.To, e.At(), 0)
				}
			}
		}
		i := s.Dept.ItemIndex(e.Item)
		if i < 0 {
			continue
		}
		h.seen[i] = e.At()
		if e.Reading != "" { // what was refused was read all the same
			h.read(s.Dept, i, e)
		}
	}
	return h
}

// moved notes a move of a line and of all that is in it.
func (h *history) moved(d *model.Department, i int, to model.Place, at int64, deep int) {
	h.since[i], h.seen[i] = at, at
	switch to.Kind {
	case model.Home, model.Charging, model.Bagged:
		delete(h.points, i)
	}
	if deep > 8 {
		return
	}
	for _, c := range d.Inside(i) {
		h.moved(d, c, to, at, deep+1)
	}
}

// read takes the newest number of a reading. A gauge that went up begins anew.
func (h *history) read(d *model.Department, i int, e *model.Entry) {
	answers, err := model.ParseReading(d, e.Reading, e.Verb == model.Stow)
	ask, ok := Gauge(d, &d.Items[i])
	if err != nil || !ok {
		return
	}
	check := ask.Check
	p := point{at: e.At(), flow: -1}
	for _, a := range answers {
		switch a.Check {
		case check:
			p.answer = a
		case model.FlowKey:
			p.flow = a.Number
		}
	}
	if p.answer.Check == "" {
		return
	}
	before := h.points[i]
	if k := len(before); k > 0 {
		last := before[k-1]
		switch {
		case p.answer.Number > last.answer.Number+rise(d, check):
			before = nil
		case p.at < last.at+3000: // less than three seconds is no second reading
			before = before[:k-1]
		}
	}
	h.points[i] = append(before, p)
}

// rise is how much a gauge may seem to go up without another fill.
func rise(d *model.Department, check string) float64 {
	switch check {
	case oxygen, air:
		return gauge.Step
	case bars:
		return 0
	}
	return 2
}

// take works the readings of a line out.
func (f *Figure) take(d *model.Department, points []point, at int64, lim Limits) {
	last := points[len(points)-1]
	f.Read, f.Answer, f.At, f.Readings = true, last.answer, last.at, len(points)
	f.Under = f.HasLimit && last.answer.Number < f.Limit
	it := &d.Items[f.Line]
	var t gauge.Time
	var err error
	switch f.Check {
	case oxygen:
		t, err = oxygenLeft(d, it, points, lim)
	case battery, bars, fuel:
		t, err = runLeft(d, it, f.Check, points, lim)
	case air:
		f.Sum, err = airStock(it, f, last.answer.Number)
	default:
		err = fmt.Errorf("there is no sum for %s", f.Check)
	}
	switch {
	case err != nil:
		f.Sum = sum.Answer{Name: "time left", Text: "no time can be said: " + err.Error()}
		return
	case f.Check == air:
		return
	}
	f.Sum, f.Measured = t.Answer, t.Measured
	if t.None {
		return
	}
	f.Timed = true
	gone := 0.0 // on the tarp nothing runs
	if f.Working {
		gone = max(0, float64(at-last.at)/60000)
	}
	f.Left = float64(int(sum.Sane(t.Value-gone, 0, 1e6) + 1e-9))
	f.Least = sum.Sane(t.Low-gone, 0, 1e6)
	f.Until = last.at + int64(sum.Sane(t.Value, 0, 1e6)*60000)
	f.Warn = f.Working && f.Least <= lim.WarnAt(f.Check)
}

// oxygenLeft is the time of a cylinder. Its size is the columns litres and
// full_psi of the inventory, or the letter in its name.
func oxygenLeft(d *model.Department, it *model.Item, points []point, lim Limits) (gauge.Time, error) {
	c, err := Cylinder(it)
	o := gauge.Oxygen{Cylinder: c, Keep: lim.Keep}
	for _, p := range points {
		o.Readings = append(o.Readings, gauge.Pressure{Min: float64(p.at-points[0].at) / 60000, PSI: p.answer.Number})
		if p.flow > 0 {
			o.Flow = p.flow
		}
	}
	last := points[len(points)-1]
	switch {
	case err == nil && last.flow == 0: // shut off: what it fell before says nothing of now
		o.Flow, o.Readings = 0, []gauge.Pressure{{PSI: last.answer.Number}}
	case err != nil && len(points) < 2:
		return gauge.Time{}, fmt.Errorf("%w. A second reading gives the time without it", err)
	case err != nil: // the fall of the gauge asks for no litres
		o.Cylinder, o.Flow = gauge.Cylinder{Name: "this", Factor: 1, Most: d.Check(oxygen).Max}, 0
	case len(points) < 2 && o.Flow == 0:
		return gauge.Time{}, fmt.Errorf("nobody wrote the flow. Read it with the pressure, or read the gauge again")
	}
	return o.Left()
}

// Cylinder is the oxygen cylinder that a line is.
func Cylinder(it *model.Item) (gauge.Cylinder, error) {
	if l, f, ok := filled(it); ok {
		return gauge.Sized(l, f)
	}
	words := strings.FieldsFunc(it.Name, func(r rune) bool { return r == ' ' || r == ',' })
	for k, w := range words {
		c, err := gauge.Named(w)
		if err == nil && w == strings.ToUpper(w) && k > 0 {
			return c, nil
		}
	}
	return gauge.Cylinder{}, fmt.Errorf("its name has no size of the table (D, E, M, G, H, K): the inventory can say litres and full_psi")
}

// filled reads the two columns of the inventory that a cylinder may have.
func filled(it *model.Item) (litres, full float64, ok bool) {
	l, err1 := fmt.Sscanf(it.Extra["litres"], "%g", &litres)
	f, err2 := fmt.Sscanf(it.Extra["full_psi"], "%g", &full)
	return litres, full, err1 == nil && err2 == nil && l == 1 && f == 1
}

// runLeft is the time of a battery or a tank.
func runLeft(d *model.Department, it *model.Item, check string, points []point, lim Limits) (gauge.Time, error) {
	r := gauge.Run{Kind: gauge.Battery, Floor: gauge.Battery.Floor()}
	if check == fuel {
		r.Kind, r.Floor = gauge.Fuel, gauge.Fuel.Floor()
	} else if lim.Cold {
		r.Cold, _ = gauge.ColdAt(20)
	}
	for _, p := range points {
		min := float64(p.at-points[0].at) / 60000
		l := gauge.Percent(min, p.answer.Number)
		if check == bars {
			var err error
			if l, err = gauge.Bars(min, int(p.answer.Number), int(d.Check(bars).Max)); err != nil {
				return gauge.Time{}, err
			}
		}
		r.Levels = append(r.Levels, l)
	}
	if len(points) > 1 {
		return r.Left() // by its own fall, without a table
	}
	t, ok := lim.Full(it)
	switch {
	case ok:
		r.Table = t
	case r.Levels[0].Percent > r.Floor:
		return gauge.Time{}, fmt.Errorf("one reading, and no time of a full one in Settings, Limits. A second reading gives the time")
	default:
		r.Table = gauge.Figure(60) // the level is at the floor: there is no time to work out
	}
	return r.Left()
}

// airStock is breathing air on the shelf, and no timer.
func airStock(it *model.Item, f *Figure, psi float64) (sum.Answer, error) {
	if l, full, ok := filled(it); ok {
		st, err := gauge.Air{Litres: l, FullPSI: full, PSI: psi}.Stock()
		return st.Answer, err
	}
	a := sum.Answer{Name: "breathing air in stock", Unit: "psi", Value: psi, Low: psi, High: psi,
		Formula: "recharge at 90% of the full pressure or less; the line is the limit of the inventory",
		Source:  "29 CFR 1910.134(h)(3)(iii)",
		Limits:  "stock only, never a timer for anybody who breathes it: that is their gauge and the entry-control officer; litres stand where the inventory has litres and full_psi"}
	a.Text = sum.Say(psi, 0) + " psi: no recharge"
	if f.Under {
		a.Text = fmt.Sprintf("%s psi: recharge (the line is %s psi)", sum.Say(psi, 0), sum.Say(f.Limit, 0))
	}
	return a, nil
}
