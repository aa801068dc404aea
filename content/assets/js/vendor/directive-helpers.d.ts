export * from "lit-html/directive-helpers.js";
