// node validate.js BUNDLE.json: holds an exported bundle to two validators that know nothing of each other: the JSON schema that HL7
// publishes with R4 (by ajv), and `fhir`, which has the required elements and the value sets. Either alone is not enough: the
// schema takes a resource without its status. Then spoils the bundle in eight ways, none of which may pass both.
"use strict";
const fs = require("fs");
const SchemaValidator = require("@asymmetrik/fhir-json-schema-validator");
const { Fhir } = require("fhir");

const schema = new SchemaValidator();
const rules = new Fhir();

// Entry by entry against its own type: a whole bundle gives an error for each of 146 types.
function bySchema(bundle) {
  const bad = [];
  for (const resource of [bundle, ...bundle.entry.map((entry) => entry.resource)]) {
    for (const error of schema.validate(resource) || []) {
      bad.push(`${resource.resourceType}${error.dataPath} ${error.message}`);
    }
  }
  return bad;
}

function byRules(bundle) {
  const bad = [];
  for (const resource of [bundle, ...bundle.entry.map((entry) => entry.resource)]) {
    for (const message of rules.validate(resource, { errorOnUnexpected: true }).messages) {
      if (message.severity === "error") bad.push(`${resource.resourceType} ${message.location}: ${message.message}`);
    }
  }
  return bad;
}

const first = (bundle, type, where = () => true) =>
  bundle.entry.map((entry) => entry.resource).find((resource) => resource.resourceType === type && where(resource));

// What is spoilt, and which of the two has to see it at least.
const spoilt = [
  ["subject removed", ["schema", "rules"], (b) => delete first(b, "Procedure").subject],
  ["unknown property", ["schema"], (b) => (first(b, "Procedure").surgeonsMood = "good")],
  ["time without zone", ["schema"], (b) => (first(b, "Procedure").performedPeriod.start = "2026-11-25T08:00:20")],
  ["category that is none", ["schema"], (b) => (first(b, "BiologicallyDerivedProduct").productCategory = "cornea")],
  ["number as text", ["schema"], (b) => (first(b, "Observation", (r) => r.valueQuantity).valueQuantity.value = "2.25")],
  ["status removed", ["rules"], (b) => delete first(b, "Procedure").status],
  ["status that is none", ["rules"], (b) => (first(b, "Observation").status = "banana")],
  ["code removed", ["schema", "rules"], (b) => delete first(b, "Observation").code],
];

let wrong = 0;
function hold(good, words) {
  console.log(`${good ? "held  " : "BROKEN"}  ${words}`);
  if (!good) wrong += 1;
}

const text = fs.readFileSync(process.argv[2], "utf8");
const sound = JSON.parse(text);
const found = { schema: bySchema(sound), rules: byRules(sound) };
hold(found.schema.length === 0, `the bundle by the schema, ${sound.entry.length} entries ${found.schema.join("; ")}`);
hold(found.rules.length === 0, `the bundle by required elements and value sets ${found.rules.join("; ")}`);
for (const [name, seenBy, spoil] of spoilt) {
  const bundle = JSON.parse(text);
  spoil(bundle);
  const seen = { schema: bySchema(bundle).length > 0, rules: byRules(bundle).length > 0 };
  hold(seenBy.every((one) => seen[one]), `${name}: to be seen by ${seenBy.join(" and ")}; seen ${JSON.stringify(seen)}`);
}

// What neither looks at: every reference within the bundle leads to one of its entries, each full URL stands once, and no name.
const urls = sound.entry.map((entry) => entry.fullUrl);
hold(new Set(urls).size === urls.length, "each full URL stands once");
const references = [...text.matchAll(/"reference": "([^"]*)"/g)].map((match) => match[1]);
hold(references.length > 0 && references.every((one) => urls.includes(one)), "every reference leads to an entry");
hold(!sound.entry.some((entry) => entry.resource.resourceType === "Patient"), "no patient stands in it");
process.exit(wrong === 0 ? 0 : 1);
