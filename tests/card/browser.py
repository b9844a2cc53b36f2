"""A headless Chromium, driven over its debugging protocol: paper and backgrounds are set there, not on the command line."""

from __future__ import annotations

import base64
import itertools
import json
import re
import subprocess
import tempfile
from pathlib import Path

import websocket

A4, LETTER = (210 / 25.4, 297 / 25.4), (8.5, 11.0)


class Browser:
    def __init__(self) -> None:
        self.folder = tempfile.TemporaryDirectory()
        self.process = subprocess.Popen(
            ["chromium", "--headless", "--no-sandbox", "--disable-gpu", "--remote-debugging-port=0",
             f"--user-data-dir={self.folder.name}", "--remote-allow-origins=*", "about:blank"],
            stdout=subprocess.DEVNULL, stderr=subprocess.PIPE, text=True,
        )
        address = None
        for line in self.process.stderr:
            found = re.search(r"ws://[^/]+/", line)
            if found:
                address = line[found.start():].strip()
                break
        assert address, "the browser names its address"
        self.numbers = itertools.count(1)
        self.socket = websocket.create_connection(address, timeout=60)
        target = self.ask("Target.createTarget", url="about:blank")["targetId"]
        self.session = self.ask("Target.attachToTarget", targetId=target, flatten=True)["sessionId"]
        self.ask("Page.enable")

    session = None

    def ask(self, method: str, **params: object) -> dict:
        number = next(self.numbers)
        message = {"id": number, "method": method, "params": params}
        if self.session:
            message["sessionId"] = self.session
        self.socket.send(json.dumps(message))
        while True:
            answer = json.loads(self.socket.recv())
            if answer.get("id") == number:
                assert "error" not in answer, answer
                return answer["result"]

    def open(self, page: str, wide: int = 794, media: str = "print") -> None:
        """Shows a page at a width in CSS pixels."""
        self.ask("Emulation.setEmulatedMedia", media=media)
        self.ask("Emulation.setDeviceMetricsOverride", width=wide, height=1123, deviceScaleFactor=1, mobile=False)
        frame = self.ask("Page.getFrameTree")["frameTree"]["frame"]["id"]
        self.ask("Page.setDocumentContent", frameId=frame, html=page)

    def run(self, script: str) -> object:
        answer = self.ask("Runtime.evaluate", expression=script, returnByValue=True)
        assert "exceptionDetails" not in answer, answer
        return answer["result"].get("value")

    def printed(self, paper: tuple[float, float], backgrounds: bool = False) -> bytes:
        margin = 10 / 25.4
        answer = self.ask(
            "Page.printToPDF", paperWidth=paper[0], paperHeight=paper[1], printBackground=backgrounds,
            marginTop=margin, marginBottom=margin, marginLeft=margin, marginRight=margin,
        )
        return base64.b64decode(answer["data"])

    def close(self) -> None:
        self.socket.close()
        self.process.terminate()
        self.process.wait()
        self.process.stderr.close()
        self.folder.cleanup()


def pages(pdf: bytes, path: Path) -> int:
    path.write_bytes(pdf)
    said = subprocess.run(["pdfinfo", str(path)], capture_output=True, text=True, check=True).stdout
    return int(re.search(r"Pages:\s+(\d+)", said)[1])
