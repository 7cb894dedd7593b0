package rundown

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"tarpside/model"
	"tarpside/model/gauge"
)

// Limits are the settings of the department for what runs down.
type Limits struct {
	Warn  map[string]float64 // by check: minutes left at which to warn
	Keep  float64            // psi of oxygen kept back
	Cold  bool               // it is below freezing: batteries give less
	Fulls map[string]float64 // by family: minutes of a full one at its work, as the department knows it
	Outs  map[string]float64 // by class: minutes after which a piece is out long; 0 is never
}

// Usual are the limits with which a department starts: common practice, from
// memory. Ten minutes are what it takes to fetch and change a cylinder.
func Usual() Limits {
	l := Limits{Warn: map[string]float64{oxygen: 10, battery: 10, bars: 10, fuel: 15}, Keep: gauge.Residual,
		Fulls: map[string]float64{}, Outs: map[string]float64{}}
	for _, c := range Classes() {
		l.Outs[c.ID] = c.Minutes
	}
	return l
}

// WarnAt is the minutes left at which to warn for a check.
func (l Limits) WarnAt(check string) float64 { return l.Warn[check] }

// Checks are the checks that have a time, in words.
func Checks() []struct{ ID, Name string } {
	return []struct{ ID, Name string }{{oxygen, "Oxygen"}, {battery, "Battery, percent"}, {bars, "Battery, bars"}, {fuel, "Fuel"}}
}

// tools are the families of inventories that the table of typical times knows
// by another word.
var tools = map[string]string{"power": "powerunit", "hpu": "powerunit"}

// Full is the time of a full one of a line, where it is known: the
// department's own figure, else a typical one.
func (l Limits) Full(it *model.Item) (gauge.Table, bool) {
	if min := l.Fulls[it.Family]; min > 0 {
		t := gauge.Figure(min)
		t.Source = "the time of a full one in Settings, Limits; its margin of 25% is from memory"
		return t, true
	}
	name := it.Family
	if other, ok := tools[name]; ok {
		name = other
	}
	t, err := gauge.Typical(name)
	return t, err == nil
}

// A Class is pieces that are out long after so many minutes.
type Class struct {
	ID, Name string
	Families []string
	Minutes  float64 // with which a department starts
	Why      string
}

// Classes are the classes of pieces that may be out long. A lantern runs down,
// a cutter that nobody names for long lies somewhere.
func Classes() []Class { return slices.Clone(classes) }

var classes = []Class{
	{"lights", "Lanterns and lights", []string{"lantern", "batlight", "headlamp", "lightbattery"}, 60, "look at its charge"},
	{"rescue", "Rescue tools", []string{"cutter", "spreader", "ram", "combi"}, 30, "still in use, or lying somewhere?"},
	{"meters", "Cameras and meters", []string{"tic", "gasmeter"}, 45, "look at its charge"},
}

// ClassOf is the class of a line, if it has one.
func ClassOf(it *model.Item) (Class, bool) {
	if it.Family == "" {
		return Class{}, false
	}
	family := strings.ToLower(it.Family)
	for i := range classes {
		if slices.Contains(classes[i].Families, family) {
			return classes[i], true
		}
	}
	return Class{}, false
}

// A Long is a piece that is at a place longer than its class may be, with
// nothing logged of it.
type Long struct {
	Line    int
	Place   model.Place
	Class   Class
	Since   int64   // Unix ms of what was logged of it last
	Minutes float64 // since then
	Limit   float64
}

// Words say what is the matter: "Battery cutter at V2: nothing logged for 38 min".
func (o Long) Words(name, place string) string {
	return fmt.Sprintf("%s at %s: nothing logged for %d min", name, place, int(o.Minutes))
}

// Longs are the pieces at places of the scene that are out long: the furthest
// over its limit first. A figure with a time has its own warning: it is out
// long only after the lesser of both.
func Longs(s *model.State, entries []model.Entry, scene string, at int64, lim Limits, figures []Figure) []Long {
	h := follow(s, entries, scene)
	timed := map[int]*Figure{}
	for k := range figures {
		if figures[k].Timed {
			timed[figures[k].Line] = &figures[k]
		}
	}
	var out []Long
	for i := range s.Dept.Items {
		c, ok := ClassOf(&s.Dept.Items[i])
		limit := lim.Outs[c.ID]
		if !ok || limit <= 0 {
			continue
		}
		p := s.Real(whereOut(s, i))
		if p.Kind != model.At || h.seen[i] == 0 {
			continue
		}
		o := Long{Line: i, Place: p, Class: c, Since: h.seen[i], Limit: limit, Minutes: float64(at-h.seen[i]) / 60000}
		if f := timed[i]; f != nil && f.Until > 0 {
			o.Limit = min(limit, max(0, float64(f.Until-f.At)/60000))
		}
		if o.Minutes >= o.Limit {
			out = append(out, o)
		}
	}
	slices.SortStableFunc(out, func(a, b Long) int {
		return cmp.Or(cmp.Compare(b.Minutes-b.Limit, a.Minutes-a.Limit), a.Line-b.Line)
	})
	return out
}
