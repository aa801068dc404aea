export * from "lit-html";
