package loadup

import "tarpside/model"

// A Load is one row of the load order as people read it.
type Load struct {
	Step
	Line      int // position in Dept.Items
	Quantity  int // on the tarp
	Slot      string
	WeightLb  float64 // of one piece with what is in it now
	TwoPerson bool
}

// List is the load order of a rig: its lines with pieces on the tarp itself.
// A line that lives in a kit is left out while its kit is elsewhere. At is
// the door where somebody is loading now, nil if nobody is.
func List(s *model.State, rig string, at *Door) []Load {
	d := s.Dept
	p := Problem{Rules: d.Rules, KitOf: kitOf(s), Aboard: aboard(s), DoorOf: doorOf(s), At: at}
	quantity := map[string]int{}
	for i := range d.Items {
		it := &d.Items[i]
		n := onTarp(s, i)
		if it.Rig != rig || n == 0 {
			continue
		}
		if home := s.Real(s.HomeOf(i)); home.Kind != model.Home && home.Kind != model.Tarp {
			continue
		}
		piece := Piece{Item: it.ID, Slot: it.Slot, Order: it.Order}
		if slot := d.Slot(it.Slot); slot != nil {
			piece.Door, piece.Depth = Door{slot.Lap, slot.Compartment}, slot.Depth
		}
		p.Pieces = append(p.Pieces, piece)
		quantity[it.ID] = n
	}
	var out []Load
	for _, step := range Plan(p) {
		i := d.ItemIndex(step.Item)
		out = append(out, Load{Step: step, Line: i, Quantity: quantity[step.Item], Slot: d.Items[i].Slot,
			WeightLb: s.Weight(i), TwoPerson: s.TwoPerson(i)})
	}
	return out
}

// ClosedBy names what keeps the slot of a line closed now, none if it is open.
func ClosedBy(s *model.State, line int) []string {
	return Closed(s.Dept.Items[line].ID, rulesOf(s, line), aboard(s), doorOf(s)).By()
}

// rulesOf are the rules that bear on a line: those that name it as first, and
// those of its through bay.
func rulesOf(s *model.State, line int) []model.StowRule {
	first := s.Dept.RulesFirst(s.Dept.Items[line].ID)
	if len(first) == 0 {
		return nil
	}
	for _, i := range first {
		if s.Dept.Rules[i].Closes == model.BothEnds {
			return s.Dept.Rules
		}
	}
	rules := make([]model.StowRule, 0, len(first))
	for _, i := range first {
		rules = append(rules, s.Dept.Rules[i])
	}
	return rules
}

func onTarp(s *model.State, line int) int {
	n := 0
	for _, st := range s.Line(line).Stacks {
		if st.Place.Kind == model.Tarp {
			n += st.N
		}
	}
	return n
}

func aboard(s *model.State) func(string) bool {
	return func(item string) bool {
		i := s.Dept.ItemIndex(item)
		return i >= 0 && s.Aboard(i)
	}
}

func kitOf(s *model.State) func(string) string {
	return func(item string) string {
		if it := s.Dept.Item(item); it != nil {
			return it.Kit
		}
		return ""
	}
}

func doorOf(s *model.State) func(string) Door {
	return func(item string) Door {
		if it := s.Dept.Item(item); it != nil {
			if slot := s.Dept.Slot(it.Slot); slot != nil {
				return Door{slot.Lap, slot.Compartment}
			}
		}
		return Door{}
	}
}
