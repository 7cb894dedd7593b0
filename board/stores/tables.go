package stores

import (
	"fmt"
	"strings"

	"tarpside/model"
)

// tables are the files of a department in the order in which they are read,
// named and written.
var tables = []anyTable{rigs, slots, items, rules, checks, members, agencies, places, stock, pulls}

var rigs = table[model.Rig]{
	name: model.TableRigs, required: true,
	key:   func(x *model.Rig) string { return x.ID },
	rows:  func(d *model.Department) *[]model.Rig { return &d.Rigs },
	extra: func(x *model.Rig) *map[string]string { return &x.Extra },
	columns: []column[model.Rig]{
		key("rig", func(x *model.Rig) *string { return &x.ID }),
		filled("name", func(x *model.Rig) *string { return &x.Name }),
		text("agency", func(x *model.Rig) *string { return &x.Agency }),
		text("role", func(x *model.Rig) *string { return &x.Role }),
		whole("seats", 0, 0, func(x *model.Rig) *int { return &x.Seats }),
		text("mark_words", func(x *model.Rig) *string { return &x.MarkWords }),
		text("mark_shape", func(x *model.Rig) *string { return &x.MarkShape }),
		text("mark_color", func(x *model.Rig) *string { return &x.MarkColor }),
	},
}

var slots = table[model.Slot]{
	name: model.TableSlots, required: true,
	key:   func(x *model.Slot) string { return x.ID },
	rows:  func(d *model.Department) *[]model.Slot { return &d.Slots },
	extra: func(x *model.Slot) *map[string]string { return &x.Extra },
	columns: []column[model.Slot]{
		key("slot", func(x *model.Slot) *string { return &x.ID }),
		text("rig", func(x *model.Slot) *string { return &x.Rig }),
		text("compartment", func(x *model.Slot) *string { return &x.Compartment }),
		text("side", func(x *model.Slot) *string { return &x.Side }),
		text("description", func(x *model.Slot) *string { return &x.Description }),
		number("hand_height_in", func(x *model.Slot) *float64 { return &x.HandHeightIn }),
		whole("depth", 0, 0, func(x *model.Slot) *int { return &x.Depth }),
		whole("lap", 0, 0, func(x *model.Slot) *int { return &x.Lap }),
	},
}

// The kind stands before the quantity, which depends on it.
var items = table[model.Item]{
	name: model.TableItems, required: true,
	key:   func(x *model.Item) string { return x.ID },
	rows:  func(d *model.Department) *[]model.Item { return &d.Items },
	extra: func(x *model.Item) *map[string]string { return &x.Extra },
	columns: []column[model.Item]{
		key("item", func(x *model.Item) *string { return &x.ID }),
		filled("name", func(x *model.Item) *string { return &x.Name }),
		text("short_name", func(x *model.Item) *string { return &x.ShortName }),
		{"other_names", getOtherNames, setOtherNames, false},
		text("rig", func(x *model.Item) *string { return &x.Rig }),
		text("slot", func(x *model.Item) *string { return &x.Slot }),
		{"kind", func(x *model.Item) string { return string(x.Kind) }, setKind, false},
		{"quantity", func(x *model.Item) string { return fmt.Sprint(x.Quantity) }, setQuantity, true},
		text("unit", func(x *model.Item) *string { return &x.Unit }),
		{"weight_lb", getWeight, setWeight, true},
		text("kit", func(x *model.Item) *string { return &x.Kit }),
		{"checks", getAsks, setAsks, false},
		text("family", func(x *model.Item) *string { return &x.Family }),
		flag("critical", func(x *model.Item) *bool { return &x.Critical }),
		flag("two_person", func(x *model.Item) *bool { return &x.TwoPerson }),
		flag("small", func(x *model.Item) *bool { return &x.Small }),
		flag("dark", func(x *model.Item) *bool { return &x.Dark }),
		{"least_usable", getLeast, setLeast, true},
		whole("order", 0, 0, func(x *model.Item) *int { return &x.Order }),
		text("stock", func(x *model.Item) *string { return &x.Stock }),
		text("mark", func(x *model.Item) *string { return &x.Mark }),
	},
}

var rules = table[model.StowRule]{
	name: model.TableRules, keyless: true,
	key:   func(x *model.StowRule) string { return x.First + " before " + x.Then },
	rows:  func(d *model.Department) *[]model.StowRule { return &d.Rules },
	extra: func(x *model.StowRule) *map[string]string { return &x.Extra },
	columns: []column[model.StowRule]{
		text("first", func(x *model.StowRule) *string { return &x.First }),
		text("then", func(x *model.StowRule) *string { return &x.Then }),
		{"closes", func(x *model.StowRule) string { return x.Closes }, setCloses, false},
		text("group", func(x *model.StowRule) *string { return &x.Group }),
		text("why", func(x *model.StowRule) *string { return &x.Why }),
	},
}

var checks = table[model.Check]{
	name: model.TableChecks, required: true,
	key:   func(x *model.Check) string { return x.ID },
	rows:  func(d *model.Department) *[]model.Check { return &d.Checks },
	extra: func(x *model.Check) *map[string]string { return &x.Extra },
	columns: []column[model.Check]{
		checkKey(),
		filled("question", func(x *model.Check) *string { return &x.Question }),
		{"answer", func(x *model.Check) string { return x.Answer }, setAnswer, false},
		text("passes", func(x *model.Check) *string { return &x.Passes }),
		text("if_it_fails", func(x *model.Check) *string { return &x.IfItFails }),
		{"override", func(x *model.Check) string { return x.Override }, setOverride, false},
	},
}

var members = table[model.Member]{
	name:  model.TableMembers,
	key:   func(x *model.Member) string { return x.ID },
	rows:  func(d *model.Department) *[]model.Member { return &d.Members },
	extra: func(x *model.Member) *map[string]string { return &x.Extra },
	columns: []column[model.Member]{
		key("member", func(x *model.Member) *string { return &x.ID }),
		filled("name", func(x *model.Member) *string { return &x.Name }),
		text("role", func(x *model.Member) *string { return &x.Role }),
		flag("officer", func(x *model.Member) *bool { return &x.Officer }),
		text("agency", func(x *model.Member) *string { return &x.Agency }),
		text("rig", func(x *model.Member) *string { return &x.Rig }), // or a word: "command"
	},
}

var agencies = table[model.Agency]{
	name:  model.TableAgencies,
	key:   func(x *model.Agency) string { return x.Code },
	rows:  func(d *model.Department) *[]model.Agency { return &d.Agencies },
	extra: func(x *model.Agency) *map[string]string { return &x.Extra },
	columns: []column[model.Agency]{
		key("agency", func(x *model.Agency) *string { return &x.Code }),
		filled("name", func(x *model.Agency) *string { return &x.Name }),
		text("kind", func(x *model.Agency) *string { return &x.Kind }),
		text("phone", func(x *model.Agency) *string { return &x.Phone }),
	},
}

var places = table[model.PlaceName]{
	name:  model.TablePlaces,
	key:   func(x *model.PlaceName) string { return x.Place },
	rows:  func(d *model.Department) *[]model.PlaceName { return &d.Places },
	extra: func(x *model.PlaceName) *map[string]string { return &x.Extra },
	columns: []column[model.PlaceName]{
		key("place", func(x *model.PlaceName) *string { return &x.Place }),
		text("meaning", func(x *model.PlaceName) *string { return &x.Meaning }),
	},
}

// A pack of nothing cannot be ordered: it holds one at least.
var stock = table[model.Stock]{
	name:  model.TableStock,
	key:   func(x *model.Stock) string { return x.ID },
	rows:  func(d *model.Department) *[]model.Stock { return &d.Stock },
	extra: func(x *model.Stock) *map[string]string { return &x.Extra },
	columns: []column[model.Stock]{
		key("stock", func(x *model.Stock) *string { return &x.ID }),
		filled("name", func(x *model.Stock) *string { return &x.Name }),
		whole("on_hand", 0, 0, func(x *model.Stock) *int { return &x.OnHand }),
		number("weekly_mean", func(x *model.Stock) *float64 { return &x.WeeklyMean }),
		number("weekly_sd", func(x *model.Stock) *float64 { return &x.WeeklySD }),
		number("lead_weeks", func(x *model.Stock) *float64 { return &x.LeadWeeks }),
		whole("pack", 1, 1, func(x *model.Stock) *int { return &x.Pack }),
	},
}

var pulls = table[model.Pull]{
	name: model.TablePulls, keyless: true,
	key: func(x *model.Pull) string {
		return x.List + ": " + strings.TrimSpace(x.Item+" "+x.Name)
	},
	rows:  func(d *model.Department) *[]model.Pull { return &d.Pulls },
	extra: func(x *model.Pull) *map[string]string { return &x.Extra },
	columns: []column[model.Pull]{
		filled("list", func(x *model.Pull) *string { return &x.List }),
		text("item", func(x *model.Pull) *string { return &x.Item }),
		text("name", func(x *model.Pull) *string { return &x.Name }),
		{"quantity", func(x *model.Pull) string { return x.Quantity }, setPullQuantity, false},
		text("need", func(x *model.Pull) *string { return &x.Need }),
		text("season", func(x *model.Pull) *string { return &x.Season }),
		text("note", func(x *model.Pull) *string { return &x.Note }),
	},
}
