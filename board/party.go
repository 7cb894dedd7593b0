package board

import (
	"encoding/json"

	"tarpside/model/trail"
)

// settingParty and a scene's id is the name of the setting that keeps what was
// chosen for the party of that scene.
const settingParty = "party:"

// Party is what was chosen for the party of a scene; an empty one if nothing
// was, or if what was kept cannot be read.
func (b *Board) Party(scene string) trail.Party {
	var p trail.Party
	text, err := b.Setting(settingParty + scene)
	if err != nil || json.Unmarshal([]byte(text), &p) != nil {
		return trail.Party{}
	}
	return p
}

// SetParty keeps what was chosen for the party of a scene, but for the weight
// of the patient, which is kept nowhere.
func (b *Board) SetParty(scene string, p trail.Party) error {
	p.Trip.PatientLb = 0
	text, err := json.Marshal(p)
	if err != nil {
		return err
	}
	return b.SetSetting(settingParty+scene, string(text))
}
