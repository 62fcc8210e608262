package scenarios

import (
	"encoding/json"
	"strings"

	"dwellcast/stations/motion"
)

// object is a piece of a JSON schema.
type object = map[string]any

// LineSchema is the schema of a line file for editors (JSON Schema 2020-12). It knows every key and the form of every value;
// what one value means for another only reading the file can tell.
func LineSchema() []byte {
	definitions := object{}
	for _, g := range lineKeys {
		definitions[g.name] = g.schema()
	}
	for name, value := range valueSchemas() {
		definitions[name] = value
	}
	schema := object{
		"$schema": "https://json-schema.org/draft/2020-12/schema",
		"title":   "dwellcast line file",
		"$ref":    "#/$defs/line",
		"$defs":   definitions,
	}
	text, err := json.MarshalIndent(schema, "", "  ")
	if err != nil {
		panic(err) // it is made of texts only
	}
	return append(text, '\n')
}

// schema of a map with its keys.
func (g keyGroup) schema() object {
	properties, required := object{}, []string{}
	for _, k := range g.keys {
		properties[k.key] = k.schema()
		if k.without == "required" {
			required = append(required, k.key)
		}
	}
	s := object{"type": "object", "properties": properties, "additionalProperties": false}
	if len(required) > 0 {
		s["required"] = required
	}
	if g.about != "" {
		s["description"] = g.about
	}
	return s
}

// schema of the value of a key.
func (k lineKey) schema() object {
	var words []string
	var choices []object
	for _, w := range strings.Split(k.is, "|") {
		switch {
		case strings.HasPrefix(w, `"`):
			words = append(words, strings.Trim(w, `"`))
		case strings.HasPrefix(w, "["):
			choices = append(choices, object{"type": "array", "items": reference(strings.Trim(w, "[]"))})
		case strings.HasPrefix(w, "{"):
			choices = append(choices, object{"type": "object", "additionalProperties": reference(strings.Trim(w, "{}"))})
		default:
			choices = append(choices, reference(w))
		}
	}
	if len(words) > 0 {
		choices = append(choices, object{"enum": words})
	}
	s := choices[0]
	if len(choices) > 1 {
		s = object{"anyOf": choices}
	}
	s["description"] = k.description()
	return s
}

func (k lineKey) description() string {
	text := k.meaning
	if k.limits != "" {
		text += " (" + k.limits + ")"
	}
	if k.without != "" && k.without != "required" {
		text += "; when left out: " + k.without
	}
	return text
}

// reference points to a definition (RFC 6901, 2013: a slash in a name is written ~1; a blank in a fragment is %20).
func reference(name string) object {
	return object{"$ref": "#/$defs/" + strings.NewReplacer("/", "~1", " ", "%20").Replace(name)}
}

// valueSchemas are the forms of single values. A unit is only checked for being there.
func valueSchemas() object {
	const number = `[+-]?([0-9]+(\.[0-9]+)?|\.[0-9]+)([eE][+-]?[0-9]+)?`
	written := func(pattern, example string) object {
		return object{"type": "string", "pattern": "^ *" + number + pattern + " *$", "examples": []string{example}}
	}
	const unit = ` *[A-Za-z%].*`
	plainOr := func(other object) object {
		return object{"anyOf": []object{{"type": "number"}, other}}
	}
	values := object{
		"rate":       assumed(written(` *([A-Za-z].*)?/.*`, "1450 cartons/h")),
		"share":      assumed(object{"anyOf": []object{{"enum": []int{0, 1}}, written(unit, "0.4 %")}}),
		"count":      assumed(plainOr(written(unit, "24 cartons"))),
		"number":     assumed(object{"type": "number"}),
		"text":       object{"type": []string{"string", "number"}},
		"motion law": object{"type": "string", "examples": motion.LawNames()},
		"yes/no":     object{"enum": []any{true, false, "yes", "no"}},
		"axis":       object{"anyOf": []object{{"type": "array", "items": reference("move")}, reference("cam")}},
	}
	for _, name := range measuredValues {
		example, _, _ := strings.Cut(keyValues[name], ",")
		values[name] = assumed(written(unit, example))
	}
	law := object{"type": "object", "minProperties": 1, "maxProperties": 1, "additionalProperties": false, "properties": lawSchemas()}
	values["law"] = law
	values["drawn"] = object{"anyOf": []object{reference("time"), reference("law"), assumption(reference("law"))}}
	values["interval"] = object{"anyOf": []object{reference("time"), reference("cartons"), reference("law"), assumption(reference("law"))}}
	return values
}

// lawSchemas takes each law's parameters as they come; their form is in the description.
func lawSchemas() object {
	laws := object{}
	for _, l := range lawForms {
		name := strings.TrimPrefix(strings.SplitN(l.form, ":", 2)[0], "{")
		laws[name] = object{"description": l.form + ": " + l.meaning}
	}
	return laws
}

// assumed is a value, or the value with its source and range.
func assumed(value object) object { return object{"anyOf": []object{value, assumption(value)}} }

func assumption(value object) object {
	return object{"type": "object", "additionalProperties": false, "properties": object{
		"value": value, "likely": value, "low": value, "high": value, "source": object{"enum": []string{"guess", "supplier", "measured"}},
	}}
}
