no-answer = { $name }: these inputs have no answer
from-to = { $low } to { $high }
