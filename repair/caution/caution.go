// Package caution holds the cautions that stand beside the work: what can hurt,
// and what to do about it. They are short, they name no product, and they defer
// to the data sheets, local codes and licensed practice.
//
// Signal words are used in the sense of ANSI Z535.6 (read second-hand): DANGER
// will kill or seriously injure, WARNING could, CAUTION may cause a minor
// injury, NOTICE concerns property.
package caution

import "scarfwright/repair/working"

// Signal is the signal word of a caution.
type Signal string

// The four signal words.
const (
	Danger   Signal = "DANGER"
	Warning  Signal = "WARNING"
	CautionW Signal = "CAUTION"
	Notice   Signal = "NOTICE"
)

// Caution is one caution.
type Caution struct {
	Signal Signal `json:"signal"`
	Text   string `json:"text"`
	Source string `json:"source"`
}

// General stands on every page and every export.
const General = "The makers' data sheets and safety data sheets rule; local codes and licensed practice decide. Figures here are estimates for a person who can judge them."

// Work is a sort of work that carries cautions of its own.
type Work string

// The sorts of work.
const (
	Lifting   Work = "lifting"
	Grinding  Work = "grinding"
	Peroxide  Work = "peroxide"
	Polyester Work = "polyester"
	Epoxy     Work = "epoxy"
	Solvent   Work = "solvent"
	Mixing    Work = "mixing"
	Gelcoat   Work = "gelcoat"
	Sanding   Work = "sanding"
	Heating   Work = "heating"
	Lamp      Work = "lamp"
	Confined  Work = "confined"
	Launch    Work = "launch"
)

var byWork = map[Work][]Caution{
	Lifting: {
		{Warning, "Shore the boat so that it stands without the panel you are about to open; nobody works under a hull that hangs or is held by one prop.", working.CommonPractice},
	},
	Grinding: {
		{Warning, "Glass and resin dust: particle mask of the highest class (P3, P100), goggles, gloves, taped coverall, extraction at the disc. Clear other people away; keep the dust off skin, food and neighbours' boats.", working.CommonPractice},
		{CautionW, "Before cutting, look for wiring, tanks and pipes behind the skin; shore power off.", working.CommonPractice},
	},
	Peroxide: {
		{Danger, "Organic peroxide blinds and burns: face shield and gloves to pour it, water at hand to rinse an eye at once and for many minutes, then a doctor.", "SDS: of the peroxide in hand"},
		{Danger, "Never let peroxide touch an accelerator, acetone, metals, dust or rags: it can explode or catch fire. Never in metal pots, never back into the bottle.", "SDS: of the peroxide in hand"},
	},
	Polyester: {
		{Warning, "Styrene vapour harms and burns, and lies low in bilges and under tents: extract low, feed air high, organic-vapour mask; no flame, no heater with an open flame, no sparks.", "SDS: of the resin in hand"},
	},
	Epoxy: {
		{Warning, "Epoxy and amine hardener sensitise for life: gloves, changed when wetted, long sleeves, no solvent on skin. Ventilate; mask if it is warm, sprayed or sanded before it is through-cured.", "SDS: of the resin in hand"},
	},
	Solvent: {
		{Warning, "Wiping with acetone fills a cabin with vapour in a minute, above what may be breathed or lit: small amounts, open air, no sparks, metal can with a lid for the rags.", "SDS: of the solvent in hand"},
	},
	Mixing: {
		{Warning, "A mixed pot heats itself: use it or spread it out thin before its time is up. One that smokes goes outside, away from anything that burns. Left-overs cool out in the open until cold, never in the bin warm.", working.CommonPractice},
	},
	Gelcoat: {
		{Notice, "Gelcoat over epoxy is disputed: some makers refuse it, some accept it on a through-cured, washed and sanded face. Follow the sheets of both, or use paint.", working.CommonPractice},
	},
	Sanding: {
		{CautionW, "Wet or with extraction; mask. Electric tools and water only through a residual-current breaker.", working.CommonPractice},
	},
	Heating: {
		{Warning, "Heat only with electric or indirect heaters: an open flame lights the vapour and wets the air. Nothing is left heating unwatched against cloth.", working.CommonPractice},
	},
	Lamp: {
		{Warning, "A lamp is hot enough to light styrene and acetone: off while polyester, gelcoat or solvent is wet and its vapour is about; warm the face first, take the lamp away to lay, bring it back when the air is clear. Hang it so that it cannot fall, an arm's length off, nothing that burns in its beam.", working.CommonPractice},
		{CautionW, "Watch the face under a lamp with a thermometer: the middle of the beam is far hotter than its edge, and foam, old gelcoat and fresh laminate have their limits. Electric leads off the wet ground, through a residual-current breaker.", working.CommonPractice},
	},
	Confined: {
		{Danger, "A locker, bilge or tent can be without air to breathe: forced ventilation, a second person outside, gas tested before entry where the local code asks for it.", working.CommonPractice},
	},
	Launch: {
		{Warning, "Watch the repair from inside while the boat still hangs in the slings; lift again if it weeps.", working.CommonPractice},
	},
}

// For returns the cautions of the given sorts of work, each once, in order.
func For(works ...Work) []Caution {
	var out []Caution
	seen := map[string]bool{}
	for _, w := range works {
		for _, c := range byWork[w] {
			if !seen[c.Text] {
				seen[c.Text] = true
				out = append(out, c)
			}
		}
	}
	return out
}
