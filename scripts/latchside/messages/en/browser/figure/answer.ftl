none = These inputs have no answer.
